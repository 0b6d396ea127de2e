import { bendingCompliance, overhang } from '../../core/flex/index.ts';
import type { Working, WorkingInput } from '../../core/working/index.ts';
import { type Bendable, flatTableOf } from './beam.ts';
import { setupOf } from './bench-setup.ts';
import { pressedShape } from './pressed.ts';

const TABLE =
  'The base is a beam over a flat hard table that can push but not pull, its free camber a parabola through ' +
  'the contact points; the contact is settled exactly, node by node.';

/** The deflection on two supports, for the press and supports as they stand. */
export function benchDeflection(pair: Bendable, load: number): Working {
  const setup = setupOf(pair.ski, load);
  const { rear, front, at } = setup;
  const { deflection } = pressedShape(pair, setup, 'bench');
  // By moments alone, without the beam's elements.
  const stored = load ** 2 * bendingCompliance(pair.bending, rear, front, at);
  return {
    key: 'flex.live-deflection',
    title: 'Deflection under the press',
    symbol: 'f',
    formula: '',
    solved: {
      by: 'with Hermite beam elements, EI(x) integrated inside each',
      of: 'twice the work of the press and twice what the bent ski stores',
      left: 'F * f',
      right: 'U',
      name: 'f',
      unit: 'J',
      within: 1e-6,
    },
    inputs: [
      given('F', 'F', load, 'N', 'load'),
      given('U', '\\int M^2/EI\\,dx', stored, 'J', 'twice what bending stores, M the moment at each place'),
    ],
    result: { value: deflection, unit: 'm' },
    note: `Supports at ${mm(rear)} and ${mm(front)} mm, press at ${mm(at)} mm from the rear contact point.`,
    source: "Euler–Bernoulli beam, any handbook (Roark's Formulas for Stress and Strain)",
    status: 'derived',
  };
}

/** The deflection on the flat table. */
export function tableDeflection(pair: Bendable, load: number): Working {
  const setup = setupOf(pair.ski, load);
  const { deflection } = pressedShape(pair, setup, 'table');
  return solved('flex.table-deflection', 'Deflection under the press, flat table', 'f', deflection, 'm', [
    given('F', 'F', load, 'N', 'load'),
    given('at', 'a', setup.at, 'm', 'press from the rear contact point'),
    given('h', 'h', pair.ski.camber, 'm', 'free camber', 'camberMm'),
  ]);
}

/** First touch, and the load that lays the base down, with the press as it stands. */
export function tableLoads(pair: Bendable): Working[] {
  const { at, length } = setupOf(pair.ski, 0);
  const { firstTouch, firstTouchAt, flatten, gapLeft, gapLeftAt } = flatTableOf(pair, at);
  const inputs = [
    given('h', 'h', pair.ski.camber, 'm', 'free camber', 'camberMm'),
    given('L', 'L', length, 'm', 'contact length', 'contactLengthMm'),
    given('at', 'a', at, 'm', 'press from the rear contact point'),
  ];
  const touch = solved('flex.first-touch', 'First touch on a flat table', 'F_1', firstTouch, 'N', [
    ...inputs,
    given('x', 'x_1', firstTouchAt, 'm', 'where the base touches'),
  ]);
  if (flatten !== null) {
    return [touch, solved('flex.flatten', 'Load that lays the base down', 'F_2', flatten, 'N', inputs)];
  }
  return [
    touch,
    solved('flex.gap-left', 'Gap that stays', 'g', gapLeft, 'm', [
      ...inputs,
      given('x', 'x_g', gapLeftAt, 'm', 'where the gap stays'),
    ]),
  ];
}

/** A natural frequency: solved, so told in words. */
export function frequency(pair: Bendable, hz: number, kind: string): Working {
  const { contactLength, mass } = pair.ski;
  const ends = overhang(pair.ski);
  const whose =
    pair.ski.bending?.kind === 'layup' ? 'the layers give the mass' : 'the mass follows the width';
  return {
    ...solved('flex.frequency', `Frequency of ${kind}, free ski`, 'f', hz, 'Hz', [
      given('L', 'L', contactLength, 'm', 'contact length', 'contactLengthMm'),
      given(
        'l_r',
        'l_r',
        ends.rear,
        'm',
        'beyond the rear contact point, three tenths of the rest',
        'lengthMm',
      ),
      given('l_f', 'l_f', ends.front, 'm', 'beyond the front contact point, seven tenths', 'lengthMm'),
      ...(mass === null || pair.ski.bending?.kind === 'layup'
        ? []
        : [given('m', 'm', mass, 'kg', 'mass of one ski', 'massKg')]),
    ]),
    note:
      'Lowest eigenvalues of the consistent stiffness and mass matrices of the free ski with its own EI(x) and ' +
      `mass a length (${whose}); rigid motions left out. What lies beyond the contact points swings with them ` +
      'as rigid pieces of the mean mass a length: how the rest of the length is shared between the ends is ' +
      'common practice, not stated by the file.',
  };
}

function solved(
  key: string,
  title: string,
  symbol: string,
  value: number,
  unit: string,
  inputs: WorkingInput[],
): Working {
  return {
    key,
    title,
    symbol,
    tex: `${symbol}(\\text{solved})`,
    formula: '',
    inputs,
    result: { value, unit },
    note: TABLE,
    source: 'Euler–Bernoulli beam elements, our own derivation; checked against the uniform ski',
    status: 'derived',
  };
}

function given(
  name: string,
  symbol: string,
  value: number,
  unit: string,
  meaning: string,
  from?: string,
): WorkingInput {
  return from === undefined
    ? { name, symbol, value, unit, meaning }
    : { name, symbol, value, unit, meaning, from };
}

const mm = (metres: number): string => (metres * 1e3).toFixed(0);
