/**
 * The chain of one instant of a run told link by link: edge angle → the ski's own radius → the radius of the path
 * → sideways push → lean → load → angulation → grip to spare. Lean and load are solved with the whole run; here they
 * are worked out anew from the rates of the rows beside, and what is left between the two is said.
 */

import { cosineRadiusWorking } from '../carve/index.ts';
import type { Quantity } from '../language/index.ts';
import { BITE, GRAVITY } from '../skier/index.ts';
import { input, type Working, type WorkingInput } from '../working/index.ts';
import type { DynamicMoment } from './dynamic-moment.ts';

const BALANCE = { key: 'source.wholeRun' } as const;
const SHELF = { key: 'source.shelf' } as const;
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
    title: { key: 'run.title.lean' },
    symbol: '\\psi',
    formula: 'atan2(A, N) + asin(min(1, max(-1, (l * psi_dd + 2 * l_d * psi_d) / sqrt(A^2 + N^2))))',
    inputs: [
      input('A', 'A', 'run.pathAsks', side * m.sideways, 'm/s^2', 'run.sideways'),
      input('N', 'N', 'run.intoSnow', m.intoSnow, 'm/s^2'),
      ...legInputs(m, side),
      input('psi_dd', '\\ddot\\psi', 'run.leanAcceleration', side * m.leanAcceleration, 'rad/s^2'),
    ],
    result: { value: side * m.leanFromBalance, unit: 'rad' },
    note: {
      key: 'run.note.solvedLean',
      values: {
        standing: angle(side * Math.atan2(m.sideways, m.intoSnow)),
        lean: angle(side * m.lean),
        apart: angle(Math.abs(m.lean - m.leanFromBalance)),
      },
    },
    source: BALANCE,
    status: 'derived',
  };
}

/** Load from the path's pull and the work of the leg. */
export function dynamicLoadWorking({ moment: m, mass }: Pick<MomentQuestion, 'moment' | 'mass'>): Working {
  const side = sideOf(m);
  return {
    key: 'run.load',
    title: { key: 'run.title.load' },
    symbol: 'F',
    formula: 'm * (l_dd + A * sin(psi) + N * cos(psi) - l * psi_d^2)',
    inputs: [
      input('m', 'm', 'working.skierMass', mass, 'kg'),
      input('A', 'A', 'run.pathAsks', side * m.sideways, 'm/s^2', 'run.sideways'),
      input('N', 'N', 'run.intoSnow', m.intoSnow, 'm/s^2'),
      input('psi', '\\psi', 'working.lean', side * m.lean, 'rad', 'run.lean'),
      ...legInputs(m, side).filter(({ name }) => name !== 'l_d'),
      input('l_dd', '\\ddot\\ell', 'run.legAcceleration', m.legAcceleration, 'm/s^2'),
    ],
    result: { value: m.loadFromBalance, unit: 'N' },
    note: [
      {
        key: 'run.note.bodyWeights',
        values: { times: { quantity: 'number', value: m.loadFromBalance / (mass * GRAVITY) } },
      },
      {
        key: 'run.note.solvedLoad',
        values: {
          load: { quantity: 'force', value: m.load },
          apart: { quantity: 'force', value: Math.abs(m.load - m.loadFromBalance), decimals: 1 },
        },
      },
    ],
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
    title: { key: 'run.title.hold' },
    symbol: 'h',
    formula: 'theta - b * tanh(theta / bite) - psi',
    inputs: [
      input('theta', '\\theta', 'working.edgeAngle', Math.abs(m.edge), 'rad'),
      input('b', 'b', 'working.baseBevel', baseBevel, 'rad'),
      input('bite', '4°', 'run.biteAngle', BITE, 'rad'),
      input('psi', '\\psi', 'working.leanTowardsEdge', side * m.lean, 'rad', 'run.lean'),
    ],
    result: { value: m.hold, unit: 'rad' },
    note:
      m.hold < 0 ? { key: 'run.note.noGrip' } : { key: 'run.note.gripLeft', values: { grip: angle(m.hold) } },
    source: SHELF,
    status: 'derived',
  };
}

function radiusWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  const own = Math.abs(m.ownCurvature);
  return {
    key: 'run.radius',
    title: { key: 'run.title.pathRadius' },
    symbol: 'R',
    formula: '1 / abs(kappa_c + q)',
    inputs: [
      input('kappa_c', '\\kappa_c', 'run.arcCurvature', side * m.ownCurvature, '1/m'),
      input('q', 'q', 'run.mismatchSolved', side * m.mismatch, '1/m'),
    ],
    result: { value: 1 / Math.abs(m.curvature), unit: 'm' },
    note:
      own > STRAIGHT
        ? { key: 'run.note.ownArc', values: { radius: { quantity: 'radius', value: 1 / own } } }
        : { key: 'run.note.flatSki' },
    source: { key: 'source.ownArc' },
    status: 'derived',
  };
}

function slipWorking({ moment: m, contactLength }: MomentQuestion): Working {
  return {
    key: 'run.slip',
    title: { key: 'run.title.slip' },
    symbol: '\\delta',
    formula: 'abs(q) * L / 4',
    inputs: [
      input('q', 'q', 'run.mismatch', m.mismatch, '1/m'),
      input('L', 'L', 'run.edgeInSnow', contactLength, 'm'),
    ],
    result: { value: m.slip, unit: 'rad' },
    source: { key: 'source.slip' },
    status: 'derived',
  };
}

function sidewaysWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  return {
    key: 'run.sideways',
    title: { key: 'run.title.sideways' },
    symbol: 'A',
    formula: 'u * v * kappa + g * sin(alpha) * sin(chi)',
    inputs: [
      input('u', 'u', 'run.massSpeed', m.speed, 'm/s'),
      input('v', 'v', 'working.skiSpeed', m.skiSpeed, 'm/s'),
      input('kappa', '\\kappa', 'working.pathCurvature', side * m.curvature, '1/m'),
      input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      input('alpha', '\\alpha', 'working.slopeAngle', m.slope, 'rad'),
      input('chi', '\\chi', 'working.heading', side * m.heading, 'rad'),
    ],
    result: { value: side * m.sideways, unit: 'm/s^2' },
    note: { key: 'run.note.weight' },
    source: BALANCE,
    status: 'derived',
  };
}

function angulationWorking(m: DynamicMoment): Working {
  const side = sideOf(m);
  return {
    key: 'run.angulation',
    title: { key: 'run.title.angulation' },
    symbol: '\\gamma',
    formula: 'theta - psi',
    inputs: [
      input('theta', '\\theta', 'working.edgeAngle', Math.abs(m.edge), 'rad'),
      input('psi', '\\psi', 'working.leanTowardsEdge', side * m.lean, 'rad', 'run.lean'),
    ],
    result: { value: m.angulation, unit: 'rad' },
    source: { key: 'source.tilt' },
    status: 'definition',
  };
}

const sideOf = (m: DynamicMoment): 1 | -1 => (m.edge < 0 ? -1 : 1);

function legInputs(m: DynamicMoment, side: number): WorkingInput[] {
  return [
    input('l', '\\ell', 'working.legLength', m.leg, 'm'),
    input('l_d', '\\dot\\ell', 'run.legSpeed', m.legSpeed, 'm/s'),
    input('psi_d', '\\dot\\psi', 'run.leanRate', side * m.leanRate, 'rad/s'),
  ];
}

const angle = (value: number): Quantity => ({ quantity: 'angle', value });
