import { bendingCompliance, overhang } from '../../core/flex/index.ts';
import type { PlainKey } from '../../core/language/index.ts';
import { input, type Working, type WorkingInput } from '../../core/working/index.ts';
import { type Bendable, flatTableOf } from './beam.ts';
import { setupOf } from './bench-setup.ts';
import { pressedShape } from './pressed.ts';

const TABLE = { key: 'flex.note.table' } as const;

/** The deflection on two supports, for the press and supports as they stand. */
export function benchDeflection(pair: Bendable, load: number): Working {
  const setup = setupOf(pair.ski, load);
  const { rear, front, at } = setup;
  const { deflection } = pressedShape(pair, setup, 'bench');
  // By moments alone, without the beam's elements.
  const stored = load ** 2 * bendingCompliance(pair.bending, rear, front, at);
  return {
    key: 'flex.live-deflection',
    title: { key: 'flex.title.deflection' },
    symbol: 'f',
    formula: '',
    solved: {
      by: { key: 'flex.by.elements' },
      of: { key: 'flex.of.work' },
      left: 'F * f',
      right: 'U',
      name: 'f',
      unit: 'J',
      within: 1e-6,
    },
    inputs: [
      input('F', 'F', 'working.load', load, 'N'),
      input('U', '\\int M^2/EI\\,dx', 'flex.storedTwice', stored, 'J'),
    ],
    result: { value: deflection, unit: 'm' },
    note: {
      key: 'flex.note.bench',
      values: {
        rear: { quantity: 'station', value: rear, bare: true },
        front: { quantity: 'station', value: front },
        at: { quantity: 'station', value: at },
      },
    },
    source: { key: 'source.beam' },
    status: 'derived',
  };
}

/** The deflection on the flat table. */
export function tableDeflection(pair: Bendable, load: number): Working {
  const setup = setupOf(pair.ski, load);
  const { deflection } = pressedShape(pair, setup, 'table');
  return solved('flex.table-deflection', 'flex.title.tableDeflection', 'f', deflection, 'm', [
    input('F', 'F', 'working.load', load, 'N'),
    input('at', 'a', 'flex.pressFromTail', setup.at, 'm'),
    input('h', 'h', 'working.freeCamber', pair.ski.camber, 'm', 'camberMm'),
  ]);
}

/** First touch, and the load that lays the base down, with the press as it stands. */
export function tableLoads(pair: Bendable): Working[] {
  const { at, length } = setupOf(pair.ski, 0);
  const { firstTouch, firstTouchAt, flatten, gapLeft, gapLeftAt } = flatTableOf(pair, at);
  const inputs = [
    input('h', 'h', 'working.freeCamber', pair.ski.camber, 'm', 'camberMm'),
    input('L', 'L', 'working.contactLength', length, 'm', 'contactLengthMm'),
    input('at', 'a', 'flex.pressFromTail', at, 'm'),
  ];
  const touch = solved('flex.first-touch', 'flex.title.firstTouch', 'F_1', firstTouch, 'N', [
    ...inputs,
    input('x', 'x_1', 'flex.whereTouches', firstTouchAt, 'm'),
  ]);
  if (flatten !== null) {
    return [touch, solved('flex.flatten', 'flex.title.flatten', 'F_2', flatten, 'N', inputs)];
  }
  return [
    touch,
    solved('flex.gap-left', 'flex.title.gapLeft', 'g', gapLeft, 'm', [
      ...inputs,
      input('x', 'x_g', 'flex.whereGapStays', gapLeftAt, 'm'),
    ]),
  ];
}

/** A natural frequency: solved, so told in words. */
export function frequency(pair: Bendable, hz: number, kind: 'bending 1' | 'torsion 1'): Working {
  const { contactLength, mass } = pair.ski;
  const ends = overhang(pair.ski);
  return {
    ...solved(
      'flex.frequency',
      kind === 'bending 1' ? 'flex.title.firstBending' : 'flex.title.firstTorsion',
      'f',
      hz,
      'Hz',
      [
        input('L', 'L', 'working.contactLength', contactLength, 'm', 'contactLengthMm'),
        input('l_r', 'l_r', 'flex.overhangRear', ends.rear, 'm', 'lengthMm'),
        input('l_f', 'l_f', 'flex.overhangFront', ends.front, 'm', 'lengthMm'),
        ...(mass === null || pair.ski.bending?.kind === 'layup'
          ? []
          : [input('m', 'm', 'flex.oneSkiMass', mass, 'kg', 'massKg')]),
      ],
    ),
    note: {
      key: 'flex.note.frequency',
      values: { mass: pair.ski.bending?.kind === 'layup' ? 'layers' : 'width' },
    },
  };
}

function solved(
  key: string,
  title: PlainKey,
  symbol: string,
  value: number,
  unit: string,
  inputs: WorkingInput[],
): Working {
  return {
    key,
    title: { key: title },
    symbol,
    formula: '',
    inputs,
    result: { value, unit },
    note: TABLE,
    source: { key: 'source.beamElements' },
    status: 'derived',
  };
}
