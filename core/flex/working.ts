import type { Ski } from '../pair/index.ts';
import { input, type Working } from '../working/index.ts';
import { benchPress } from './bench-press.ts';
import { type BendQuestion, benchSetup } from './bend-test.ts';
import { flatTable } from './flat-table.ts';
import { massPerLength } from './mass.ts';
import { clampedSpring, torsionalSpring, VOCABULARY } from './spring-working.ts';
import { bendingCompliance, flattenIndex, soleSpan, springs } from './springs.ts';
import { RUN_IN } from './stiff-span.ts';
import { bareBendingOf, bendingOf, torsionOf } from './stiffness.ts';
import { twistBench } from './twist-bench.ts';

export { layupWorkings } from './layup-working.ts';

const HANDBOOK = { key: 'source.handbook' } as const;

/** Load of a reading that stands for any: deflection is proportional to it. */
const ANY_LOAD = 100;

/**
 * How the flex readings come about, with supports and press as `question` puts them, under its last load; on the
 * contact points with 100 N at the boot centre where it says nothing. Empty for a ski without a stiffness
 * profile; readings the ski has no data for are left out.
 */
export function flexWorkings(ski: Ski, question: BendQuestion = {}): Working[] {
  const profile = bendingOf(ski);
  if (!profile) return [];
  const length = ski.contactLength;
  // No load bends nothing and would leave the spring unexplained.
  const loads = [question.loads?.at(-1) || ANY_LOAD];
  const setup = benchSetup(ski, { ...question, loads });
  const { at, load, rear } = setup;
  const span = setup.front - rear;
  const bench = benchPress(profile, setup);
  // By moments alone, without the beam's elements.
  const stored = load ** 2 * bendingCompliance(profile, rear, setup.front, at);
  const equivalent = (bench.spring * (at - rear) ** 2 * (setup.front - at) ** 2) / (3 * span);
  const table = flatTable(profile, { length, camber: ski.camber, at });
  const atBoot = Math.abs(at - ski.bootCentre) < 1e-9;
  const whole = span > length * (1 - 1e-9);
  const place = {
    press: atBoot ? 'boot' : 'elsewhere',
    at: { quantity: 'station', value: at },
  } as const;
  const supports = {
    supports: whole ? 'contact' : 'elsewhere',
    rear: { quantity: 'station', value: rear, bare: true },
    front: { quantity: 'station', value: setup.front },
  } as const;
  const workings: Working[] = [
    ...plateWorking(ski),
    {
      key: 'flex.spring',
      title: { key: 'flex.title.spring' },
      symbol: 'c',
      formula: 'F / f',
      solved: {
        by: { key: 'flex.by.elements' },
        of: { key: 'flex.of.work' },
        left: 'F * f',
        right: 'U',
        unit: 'J',
        within: 1e-6,
      },
      inputs: [
        input('F', 'F', { key: 'flex.pressLoad', values: { ...place, ...supports } }, load, 'N'),
        input('f', 'f', 'flex.deflectionSolved', bench.loadDeflection, 'm'),
        input('U', '\\int M^2/EI\\,dx', 'flex.storedTwice', stored, 'J'),
      ],
      result: { value: bench.spring, unit: 'N/m' },
      note: { key: 'flex.note.proportional' },
      source: VOCABULARY,
      status: 'seen',
    },
    {
      key: 'flex.uniform-equivalent',
      title: { key: 'flex.title.uniformEquivalent' },
      symbol: 'EI_u',
      formula: 'c * a^2 * (l - a)^2 / (3 * l)',
      inputs: [
        input('c', 'c', 'flex.benchSpring', bench.spring, 'N/m', 'flex.spring'),
        whole && atBoot
          ? input('a', 'a', 'flex.bootCentre', at, 'm', 'bootCentreFromTailMm')
          : input('a', 'a', 'flex.pressFromSupport', at - rear, 'm', { key: 'flex.from.bench' }),
        whole
          ? input('l', 'l', 'working.contactLength', span, 'm', 'contactLengthMm')
          : input('l', 'l', 'flex.supportDistance', span, 'm', { key: 'flex.from.bench' }),
      ],
      result: { value: equivalent, unit: 'N*m^2' },
      source: HANDBOOK,
      status: 'derived',
    },
    {
      key: 'flex.first-touch-uniform',
      title: { key: 'flex.title.firstTouchUniform' },
      symbol: 'F_1',
      formula: '48 * EI * h / L^3',
      inputs: [
        input('EI', 'EI_u', 'flex.uniformEquivalent', equivalent, 'N*m^2', 'flex.uniform-equivalent'),
        input('h', 'h', 'flex.camberParabola', ski.camber, 'm', 'camberMm'),
        input('L', 'L', 'working.contactLength', length, 'm', 'contactLengthMm'),
      ],
      result: { value: (48 * equivalent * ski.camber) / length ** 3, unit: 'N' },
      note: {
        key: 'flex.note.firstTouch',
        values: { ...place, load: { quantity: 'force', value: table.firstTouch, decimals: 1 } },
      },
      source: HANDBOOK,
      status: 'derived',
    },
    {
      key: 'flex.flatten-index',
      title: { key: 'flex.title.flattenIndex' },
      symbol: 'I_F',
      formula: 'F * L^2',
      inputs: [
        input('F', 'F_1', 'flex.firstTouchSolved', table.firstTouch, 'N'),
        input('L', 'L', 'flex.lengthForSidecut', length, 'm', 'contactLengthMm'),
      ],
      result: { value: flattenIndex(table.firstTouch, length), unit: 'N*m^2' },
      note: { key: 'flex.note.flattenIndex' },
      source: { key: 'source.flattenIndex' },
      status: 'seen',
    },
  ];
  const halfSole = ski.soleLength / 2;
  if (ski.bootCentre - halfSole > 0 && ski.bootCentre + halfSole < length) {
    const found = springs(profile, { ...ski, length });
    const [rearEnd, frontEnd] = soleSpan({ ...ski, length });
    workings.push(
      clampedSpring('shovel', found.shovel, profile, frontEnd, length),
      clampedSpring('rear', found.rear, profile, rearEnd, 0),
      {
        key: 'flex.spring-balance',
        title: { key: 'flex.title.springBalance' },
        symbol: 'c_A/c_B',
        formula: 'cA / cB',
        inputs: [
          input('cA', 'c_A', 'flex.shovelSpring', found.shovel, 'N/m', 'flex.spring-shovel'),
          input('cB', 'c_B', 'flex.rearSpring', found.rear, 'N/m', 'flex.spring-rear'),
        ],
        result: { value: found.balance, unit: '1' },
        source: VOCABULARY,
        status: 'seen',
      },
    );
    const torsion = torsionOf(ski);
    if (torsion)
      workings.push(
        torsionalSpring(twistBench(torsion, { ...ski, length }).shovel, torsion, frontEnd, length),
      );
  }
  const mass = massPerLength(ski);
  if (mass) workings.push(uniformFrequency(equivalent, mass(length / 2), length));
  return workings;
}

/** What a plate makes of EI in its middle; nothing for a ski without one. */
function plateWorking(ski: Ski): Working[] {
  const bare = bareBendingOf(ski);
  const { plate } = ski;
  if (!plate || !bare) return [];
  const middle = bare((plate.from + plate.to) / 2);
  return [
    {
      key: 'flex.plate',
      title: { key: 'flex.title.plate' },
      symbol: 'EI',
      formula: 'EIs + EIp',
      inputs: [
        input('EIs', 'EI_s', 'flex.bareSki', middle, 'N*m^2', 'bending'),
        input('EIp', 'EI_p', 'flex.plateAdds', plate.bending, 'N*m^2', 'plate.newtonM2'),
      ],
      result: { value: middle + plate.bending, unit: 'N*m^2' },
      note: {
        key: 'flex.note.plate',
        values: {
          from: { quantity: 'station', value: plate.from, bare: true },
          to: { quantity: 'station', value: plate.to },
          runIn: { quantity: 'station', value: RUN_IN },
        },
      },
      source: { key: 'source.twoBeams' },
      status: 'derived',
    },
  ];
}

function uniformFrequency(bending: number, mass: number, length: number): Working {
  const root = 4.73004;
  return {
    key: 'flex.first-frequency-uniform',
    title: { key: 'flex.title.firstFrequencyUniform' },
    symbol: 'f_1',
    formula: 'beta^2 / (2 * pi * L^2) * sqrt(EI / mu)',
    inputs: [
      input('beta', '\\beta', 'flex.firstRoot', root, '1'),
      input('L', 'L', 'working.contactLength', length, 'm', 'contactLengthMm'),
      input('EI', 'EI_u', 'flex.uniformEquivalent', bending, 'N*m^2', 'flex.uniform-equivalent'),
      input('mu', '\\mu', 'flex.midMass', mass, 'kg/m'),
    ],
    result: { value: (root ** 2 / (2 * Math.PI * length ** 2)) * Math.sqrt(bending / mass), unit: 'Hz' },
    note: { key: 'flex.note.firstFrequency' },
    source: { key: 'source.freeBeam' },
    status: 'from memory',
  };
}
