/**
 * The chain of one instant of a run told link by link: edge angle → the ski's own radius → the radius of the path
 * → sideways push → lean → load → angulation → grip to spare. Lean and load are solved with the whole run; here they
 * are worked out anew from the rates of the rows beside, and what is left between the two is said.
 */

import { cosineRadiusWorking } from '../carve/index.ts';
import { BITE, GRAVITY } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import type { DynamicMoment } from './dynamic-moment.ts';

const BALANCE = 'balance of a mass on a leg in the frame of the slope, solved over the whole run';
const SHELF =
  'the shelf cut by the base carries what leans less than it; compare Brown, On the skiability of snow, ASTM STP 1022 (1989), critical edge angle 40–70° (seen)';
const STRAIGHT = 1e-6;

export interface MomentQuestion {
  readonly moment: DynamicMoment;
  /** Skier with equipment, kg. */
  readonly mass: number;
  /** b, rad; 0 where the skis follow the lean. */
  readonly baseBevel: number;
  /** Where the cosine rule starts from, m. */
  readonly sidecutRadius: number;
  /** Edge in the snow, m. */
  readonly contactLength: number;
}

/** The whole chain in the order it is taught. */
export function explainMoment(question: MomentQuestion): Working[] {
  const { moment } = question;
  const rigid = {
    sidecutRadius: question.sidecutRadius,
    sidecutDepth: 0,
    camber: 0,
    baseBevel: question.baseBevel,
    sideAngle: Math.PI / 2,
  };
  return [
    cosineRadiusWorking(rigid, Math.abs(moment.edge)),
    radiusWorking(moment),
    slipWorking(question),
    sidewaysWorking(moment),
    dynamicLeanWorking(moment),
    dynamicLoadWorking(question),
    angulationWorking(moment),
    dynamicHoldWorking(question),
  ];
}

/** Lean from the path's pull and the swing of the mass. */
function dynamicLeanWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  return {
    key: 'run.lean',
    title: 'Lean to balance',
    symbol: '\\psi',
    formula: 'atan2(A, N) + asin(min(1, max(-1, (l * psi_dd + 2 * l_d * psi_d) / sqrt(A^2 + N^2))))',
    inputs: [
      input('A', 'A', 'what the path asks sideways', side * m.sideways, 'm/s^2', 'run.sideways'),
      input('N', 'N', 'pull into the snow', m.intoSnow, 'm/s^2'),
      ...legInputs(m, side),
      input(
        'psi_dd',
        '\\ddot\\psi',
        'how the swing of the lean changes, from the rows beside',
        side * m.leanAcceleration,
        'rad/s^2',
      ),
    ],
    result: { value: side * m.leanFromBalance, unit: 'rad' },
    note: `Standing still in the turn the skier would lean ${degrees(side * Math.atan2(m.sideways, m.intoSnow))}; the rest is the swing of the mass. The run as solved leans ${degrees(side * m.lean)} here: ${degrees(Math.abs(m.lean - m.leanFromBalance))} between the two.`,
    source: BALANCE,
    status: 'derived',
  };
}

/** Load from the path's pull and the work of the leg. */
export function dynamicLoadWorking({ moment: m, mass }: Pick<MomentQuestion, 'moment' | 'mass'>): Working {
  const side = sideOf(m);
  return {
    key: 'run.load',
    title: 'Force between skis and snow',
    symbol: 'F',
    formula: 'm * (l_dd + A * sin(psi) + N * cos(psi) - l * psi_d^2)',
    inputs: [
      input('m', 'm', 'skier with equipment', mass, 'kg'),
      input('A', 'A', 'what the path asks sideways', side * m.sideways, 'm/s^2', 'run.sideways'),
      input('N', 'N', 'pull into the snow', m.intoSnow, 'm/s^2'),
      input('psi', '\\psi', 'lean', side * m.lean, 'rad', 'run.lean'),
      ...legInputs(m, side).filter(({ name }) => name !== 'l_d'),
      input(
        'l_dd',
        '\\ddot\\ell',
        'how the speed of the leg changes, from the rows beside',
        m.legAcceleration,
        'm/s^2',
      ),
    ],
    result: { value: m.loadFromBalance, unit: 'N' },
    note: `That is ${(m.loadFromBalance / (mass * GRAVITY)).toFixed(2)} times body weight. The run as solved presses with ${m.load.toFixed(0)} N here: ${Math.abs(m.load - m.loadFromBalance).toFixed(1)} N between the two.`,
    source: BALANCE,
    status: 'derived',
  };
}

/** Hold under the boot. */
export function dynamicHoldWorking({
  moment: m,
  baseBevel,
}: Pick<MomentQuestion, 'moment' | 'baseBevel'>): Working {
  const side = sideOf(m);
  return {
    key: 'run.hold',
    title: 'Grip to spare under the boot',
    symbol: 'h',
    formula: 'theta - b * tanh(theta / bite) - psi',
    inputs: [
      input('theta', '\\theta', 'edge angle', Math.abs(m.edge), 'rad'),
      input('b', 'b', 'base bevel', baseBevel, 'rad'),
      input('bite', '4°', 'edge angle over which a flat ski comes to bite', BITE, 'rad'),
      input('psi', '\\psi', 'lean towards the side of the edge', side * m.lean, 'rad', 'run.lean'),
    ],
    result: { value: m.hold, unit: 'rad' },
    note:
      m.hold < 0
        ? 'No grip to spare: the force leans to the very edge of the shelf, and what the ski would turn beyond it, it slips.'
        : `The force may lean ${degrees(m.hold)} more before the edge lets go.`,
    source: SHELF,
    status: 'derived',
  };
}

function radiusWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  const own = Math.abs(m.ownCurvature);
  return {
    key: 'run.radius',
    title: "Radius of the skis' path",
    symbol: 'R',
    formula: '1 / abs(kappa_c + q)',
    inputs: [
      input('kappa_c', '\\kappa_c', "curve of the ski's own arc", side * m.ownCurvature, '1/m'),
      input('q', 'q', 'by how much the path misses the arc, as solved', side * m.mismatch, '1/m'),
    ],
    result: { value: 1 / Math.abs(m.curvature), unit: 'm' },
    note:
      own > STRAIGHT
        ? `The own arc of this pair has ${(1 / own).toFixed(2)} m at this edge angle and load; a ski on less than a few degrees takes up only part of it, tanh(θ/4°).`
        : 'A flat ski has no arc of its own.',
    source: 'the solved groove, or R = R_sc cosθ (from memory); the bite of a flat ski is our own',
    status: 'derived',
  };
}

function slipWorking({ moment: m, contactLength }: MomentQuestion): Working {
  return {
    key: 'run.slip',
    title: 'Mean slip of the edge',
    symbol: '\\delta',
    formula: 'abs(q) * L / 4',
    inputs: [
      input('q', 'q', 'by how much the path misses the arc', m.mismatch, '1/m'),
      input('L', 'L', 'edge in the snow', contactLength, 'm'),
    ],
    result: { value: m.slip, unit: 'rad' },
    source: 'a point at a distance x from the boot slips at the angle x q',
    status: 'derived',
  };
}

function sidewaysWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  return {
    key: 'run.sideways',
    title: 'Sideways push, a unit mass',
    symbol: 'A',
    formula: 'u * v * kappa + g * sin(alpha) * sin(chi)',
    inputs: [
      input('u', 'u', 'speed of the mass along the path', m.speed, 'm/s'),
      input('v', 'v', 'speed of the skis', m.skiSpeed, 'm/s'),
      input('kappa', '\\kappa', "curve of the skis' path", side * m.curvature, '1/m'),
      input('g', 'g', 'gravity', GRAVITY, 'm/s^2'),
      input('alpha', '\\alpha', 'slope angle', m.slope, 'rad'),
      input('chi', '\\chi', 'direction past the fall line (negative before it)', side * m.heading, 'rad'),
    ],
    result: { value: side * m.sideways, unit: 'm/s^2' },
    note: 'Before the fall line the weight helps the turn; after it the weight adds to the force.',
    source: BALANCE,
    status: 'derived',
  };
}

function angulationWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  return {
    key: 'run.angulation',
    title: 'Angulation',
    symbol: '\\gamma',
    formula: 'theta - psi',
    inputs: [
      input('theta', '\\theta', 'edge angle', Math.abs(m.edge), 'rad'),
      input('psi', '\\psi', 'lean towards the side of the edge', side * m.lean, 'rad', 'run.lean'),
    ],
    result: { value: m.angulation, unit: 'rad' },
    source: 'tilt of the skis beyond the lean of the body',
    status: 'definition',
  };
}

const sideOf = (m: DynamicMoment): 1 | -1 => (m.edge < 0 ? -1 : 1);

function legInputs(m: DynamicMoment, side: number): WorkingInput[] {
  return [
    input('l', '\\ell', 'leg, skis to the mass', m.leg, 'm'),
    input('l_d', '\\dot\\ell', 'how fast it stretches', m.legSpeed, 'm/s'),
    input('psi_d', '\\dot\\psi', 'how fast the lean changes', side * m.leanRate, 'rad/s'),
  ];
}

function input(
  name: string,
  symbol: string,
  meaning: string,
  value: number,
  unit: string,
  from?: string,
): WorkingInput {
  return from ? { name, symbol, meaning, value, unit, from } : { name, symbol, meaning, value, unit };
}

function degrees(angle: number): string {
  return `${(angle / DEGREE).toFixed(1)}°`;
}
