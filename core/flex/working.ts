import type { Ski } from '../pair/index.ts';
import type { Working } from '../working/index.ts';
import { benchPress } from './bench-press.ts';
import { type BendQuestion, benchSetup } from './bend-test.ts';
import { flatTable } from './flat-table.ts';
import { massPerLength } from './mass.ts';
import { clampedSpring, input, torsionalSpring, VOCABULARY } from './spring-working.ts';
import { bendingCompliance, flattenIndex, soleSpan, springs } from './springs.ts';
import { RUN_IN } from './stiff-span.ts';
import { bareBendingOf, bendingOf, torsionOf } from './stiffness.ts';
import { twistBench } from './twist-bench.ts';

export { layupWorkings } from './layup-working.ts';

const HANDBOOK = "any handbook (Roark's Formulas for Stress and Strain)";

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
  const press = atBoot ? 'the boot centre' : `${mm(at)} mm from the rear contact point`;
  const whole = span > length * (1 - 1e-9);
  const supports = whole ? 'the contact points' : `${mm(rear)} and ${mm(setup.front)} mm`;
  const workings: Working[] = [
    ...plateWorking(ski),
    {
      key: 'flex.spring',
      title: 'Spring constant on the bench',
      symbol: 'c',
      formula: 'F / f',
      solved: {
        by: 'for f with Hermite beam elements, EI(x) integrated inside each',
        of: 'twice the work of the press and twice what the bent ski stores',
        left: 'F * f',
        right: 'U',
        unit: 'J',
        within: 1e-6,
      },
      inputs: [
        input('F', 'F', load, 'N', `load at ${press}, supports at ${supports}`),
        input('f', 'f', bench.loadDeflection, 'm', 'deflection under the load, solved'),
        input('U', '\\int M^2/EI\\,dx', stored, 'J', 'twice what bending stores, M the moment at each place'),
      ],
      result: { value: bench.spring, unit: 'N/m' },
      note: 'The deflection is proportional to the load.',
      source: VOCABULARY,
      status: 'seen',
    },
    {
      key: 'flex.uniform-equivalent',
      title: 'Uniform stiffness with the same spring (uniform equivalent)',
      symbol: 'EI_u',
      formula: 'c * a^2 * (l - a)^2 / (3 * l)',
      inputs: [
        input('c', 'c', bench.spring, 'N/m', 'spring constant on the bench', 'flex.spring'),
        whole && atBoot
          ? input('a', 'a', at, 'm', 'boot centre from the rear contact point', 'bootCentreFromTailMm')
          : input('a', 'a', at - rear, 'm', 'press from the rear support', 'the bench as asked'),
        whole
          ? input('l', 'l', span, 'm', 'contact length', 'contactLengthMm')
          : input('l', 'l', span, 'm', 'distance of the supports', 'the bench as asked'),
      ],
      result: { value: equivalent, unit: 'N*m^2' },
      source: HANDBOOK,
      status: 'derived',
    },
    {
      key: 'flex.first-touch-uniform',
      title: 'First touch on a flat table, uniform equivalent',
      symbol: 'F_1',
      formula: '48 * EI * h / L^3',
      inputs: [
        input('EI', 'EI_u', equivalent, 'N*m^2', 'uniform equivalent', 'flex.uniform-equivalent'),
        input('h', 'h', ski.camber, 'm', 'free camber, a parabola through the contact points', 'camberMm'),
        input('L', 'L', length, 'm', 'contact length', 'contactLengthMm'),
      ],
      result: { value: (48 * equivalent * ski.camber) / length ** 3, unit: 'N' },
      note:
        'A uniform ski pressed midway, for comparison. The reading solves this ski with its own EI(x), pressed ' +
        `at ${press}, and gets ${table.firstTouch.toPrecision(4)} N.`,
      source: HANDBOOK,
      status: 'derived',
    },
    {
      key: 'flex.flatten-index',
      title: 'First touch times contact length squared',
      symbol: 'I_F',
      formula: 'F * L^2',
      inputs: [
        input('F', 'F_1', table.firstTouch, 'N', 'first touch on a flat table, from the contact solution'),
        input('L', 'L', length, 'm', 'contact length, standing for the sidecut length', 'contactLengthMm'),
      ],
      result: { value: flattenIndex(table.firstTouch, length), unit: 'N*m^2' },
      note: 'The source uses the force to flatten; first touch stands for it, since a press need not flatten a ski.',
      source: 'Truong & Lussier Desbiens, Proceedings 2018, 2(6):315',
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
        title: 'Spring balance',
        symbol: 'c_A/c_B',
        formula: 'cA / cB',
        inputs: [
          input('cA', 'c_A', found.shovel, 'N/m', 'spring constant of the shovel', 'flex.spring-shovel'),
          input('cB', 'c_B', found.rear, 'N/m', 'spring constant of the rear', 'flex.spring-rear'),
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
      title: 'Bending stiffness with the plate, in its middle',
      symbol: 'EI',
      formula: 'EIs + EIp',
      inputs: [
        input('EIs', 'EI_s', middle, 'N*m^2', 'the bare ski there', 'bending'),
        input('EIp', 'EI_p', plate.bending, 'N*m^2', 'what plate and rubber add', 'plate.newtonM2'),
      ],
      result: { value: middle + plate.bending, unit: 'N*m^2' },
      note: `From ${mm(plate.from)} to ${mm(plate.to)} mm; at either end it comes in over ${mm(RUN_IN)} mm, our own value.`,
      source: 'Two beams side by side (any text on strength of materials)',
      status: 'derived',
    },
  ];
}

function uniformFrequency(bending: number, mass: number, length: number): Working {
  const root = 4.73004;
  return {
    key: 'flex.first-frequency-uniform',
    title: 'First bending frequency of a free ski, uniform equivalent',
    symbol: 'f_1',
    formula: 'beta^2 / (2 * pi * L^2) * sqrt(EI / mu)',
    inputs: [
      input('beta', '\\beta', root, '1', 'first root of a free-free beam'),
      input('L', 'L', length, 'm', 'contact length', 'contactLengthMm'),
      input('EI', 'EI_u', bending, 'N*m^2', 'uniform equivalent', 'flex.uniform-equivalent'),
      input('mu', '\\mu', mass, 'kg/m', 'mass a length at mid-ski'),
    ],
    result: { value: (root ** 2 / (2 * Math.PI * length ** 2)) * Math.sqrt(bending / mass), unit: 'Hz' },
    note: 'For comparison, without the ends beyond the contact points. The reading solves this ski with its own EI(x) and mass, the ends swinging with it.',
    source: 'Blevins, Formulas for Natural Frequency and Mode Shape (roots seen in part)',
    status: 'from memory',
  };
}

const mm = (metres: number): string => String(Number((metres * 1e3).toFixed(1)));
