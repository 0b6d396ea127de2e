/**
 * The coach's chain told link by link: edge angle → radius → sideways push → lean → grip to spare.
 */

import { cosineRadiusWorking } from '../carve/index.ts';
import type { PlainKey } from '../language/index.ts';
import { input, type Working, type WorkingInput, workingOf } from '../working/index.ts';
import { balancedLoad, GRAVITY, speedCeiling } from './balance.ts';
import { coachWords } from './coach-words.ts';
import { idealRadius } from './ideal-carving.ts';
import { type StraightRun, terminalSpeed } from './straight-run.ts';
import {
  AT_THE_CENTRE,
  holdingSpeed,
  type TurnMoment,
  type TurnQuestion,
  turnMoment,
} from './turn-moment.ts';

const BALANCE = { key: 'source.steadyTurn' } as const;
const SHELF = { key: 'source.shelf' } as const;

/** What a turn asks sideways of a mass that leans into it. */
const PUSH = 'm * v^2 / R * (1 - l * sin(psi) / R) + m * g * sin(alpha) * sin(chi)';

/** A question to the chain, with the sidecut radius that the cosine rule starts from (m). */
export interface ChainQuestion extends TurnQuestion {
  readonly sidecutRadius: number;
}

/** The whole chain in the order it is taught; the last link's note says what to change. */
export function explainChain(question: ChainQuestion): Working[] {
  const moment = turnMoment(question);
  const rigid = {
    sidecutRadius: question.sidecutRadius,
    sidecutDepth: 0,
    camber: 0,
    baseBevel: question.baseBevel,
    sideAngle: Math.PI / 2,
  };
  return [
    cosineRadiusWorking(rigid, question.edgeAngle),
    radiusWorking(question, moment),
    normalWorking(question, moment),
    sidewaysWorking(question, moment),
    leanWorking(moment),
    loadWorking(question, moment),
    angulationWorking(question, moment),
    holdWorking(question, moment),
    holdingSpeedWorking(question),
  ];
}

function radiusWorking(q: ChainQuestion, m: TurnMoment): Working {
  return {
    ...told(
      'run.radius',
      'run.title.pairRadius',
      'R',
      '',
      'm',
      m.radius,
      [
        input('theta', '\\theta', 'working.edgeAngle', q.edgeAngle, 'rad'),
        input('F_outer', 's F', 'run.outerLoad', m.outerLoad, 'N'),
        input('s', 's', 'run.outerShare', q.outerShare, '1'),
        ...pushInputs(q, m),
      ],
      {
        note: { key: 'run.note.together' },
        source: { key: 'source.grooveOrCosine' },
      },
    ),
    solved: {
      of: { key: 'run.of.outerLoad' },
      by: { key: 'run.by.inTurn' },
      left: `s * sqrt((${PUSH})^2 + (m * g * cos(alpha))^2)`,
      right: 'F_outer',
      name: 'R',
      unit: 'N',
      within: 1e-9,
    },
  };
}

function normalWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.normalForce',
    'run.title.normalForce',
    'F_N',
    'm * g * cos(alpha)',
    'N',
    m.normal,
    [...weightInputs(q), input('alpha', '\\alpha', 'working.slopeAngle', q.slope, 'rad')],
    { source: BALANCE },
  );
}

function sidewaysWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.sidewaysForce',
    'run.title.sidewaysForce',
    'F_{lat}',
    PUSH,
    'N',
    m.sideways,
    [...pushInputs(q, m), input('R', 'R', 'working.turnRadius', m.radius, 'm', 'run.radius')],
    {
      source: BALANCE,
      note: { key: 'run.note.smallerCircle' },
    },
  );
}

function leanWorking(m: TurnMoment): Working {
  return told('run.lean', 'run.title.lean', '\\psi', 'atan2(F_lat, F_N)', 'rad', m.lean, forces(m), {
    source: BALANCE,
  });
}

function loadWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.load',
    'run.title.load',
    'F',
    'm * g * cos(alpha) / cos(psi)',
    'N',
    m.load,
    [
      ...weightInputs(q),
      input('alpha', '\\alpha', 'working.slopeAngle', q.slope, 'rad'),
      input('psi', '\\psi', 'working.lean', m.lean, 'rad', 'run.lean'),
    ],
    {
      source: BALANCE,
      note: {
        key: 'run.note.bodyWeights',
        values: { times: { quantity: 'number', value: balancedLoad(m.lean, q.slope) } },
      },
    },
  );
}

function angulationWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.angulation',
    'run.title.angulation',
    '\\gamma',
    'theta - psi',
    'rad',
    m.angulation,
    [
      input('theta', '\\theta', 'working.edgeAngle', q.edgeAngle, 'rad'),
      input('psi', '\\psi', 'working.lean', m.lean, 'rad', 'run.lean'),
    ],
    { source: { key: 'source.tilt' }, status: 'definition' },
  );
}

function holdWorking(q: ChainQuestion, m: TurnMoment): Working {
  const words = coachWords(q);
  return told(
    'run.hold',
    'run.title.hold',
    'h',
    'theta - b - psi',
    'rad',
    m.hold,
    [
      input('theta', '\\theta', 'working.edgeAngle', q.edgeAngle, 'rad'),
      input('b', 'b', 'working.baseBevel', q.baseBevel, 'rad'),
      input('psi', '\\psi', 'working.lean', m.lean, 'rad', 'run.lean'),
    ],
    { source: SHELF, note: [words.verdict, ...words.changes] },
  );
}

function holdingSpeedWorking(q: ChainQuestion): Working {
  const speed = holdingSpeed(q);
  const load = (q.mass * GRAVITY * Math.cos(q.slope)) / Math.cos(Math.max(0, q.edgeAngle - q.baseBevel));
  return told(
    'run.holdingSpeed',
    'run.title.holdingSpeed',
    'v_h',
    `sqrt(max(0, R * g * (cos(alpha) * tan(max(0, theta - b)) - sin(alpha) * sin(chi))) / max(${AT_THE_CENTRE}, 1 - l * sin(max(0, theta - b)) / R))`,
    'm/s',
    speed,
    [
      input('R', 'R', 'run.radiusAtLimit', q.turn.radius(q.edgeAngle, q.outerShare * load), 'm'),
      input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      input('l', '\\ell', 'working.legLength', q.leg ?? 0, 'm'),
      input('alpha', '\\alpha', 'working.slopeAngle', q.slope, 'rad'),
      input('theta', '\\theta', 'working.edgeAngle', q.edgeAngle, 'rad'),
      input('b', 'b', 'working.baseBevel', q.baseBevel, 'rad'),
      input('chi', '\\chi', 'working.heading', q.pastFallLine, 'rad'),
    ],
    { source: SHELF },
  );
}

/** Speed no unangulated carve exceeds on level ground. */
export function speedCeilingWorking(sidecutRadius: number): Working {
  return told(
    'run.speedCeiling',
    'run.title.speedCeiling',
    'v_{max}',
    'sqrt(g * R_sc)',
    'm/s',
    speedCeiling(sidecutRadius),
    [
      input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      input('R_sc', 'R_{sc}', 'working.sidecutRadius', sidecutRadius, 'm', 'shape.radius'),
    ],
    { source: { key: 'source.levelGround' } },
  );
}

/**
 * Radius of the ideal carve, or null where there is none.
 *
 * @param beta direction of travel from the horizontal traverse, rad; `half` +1 after the fall line, −1 before
 */
export function idealRadiusWorking(
  speed: number,
  sidecutRadius: number,
  slope: number,
  beta: number,
  half: 1 | -1,
): Working | null {
  const radius = idealRadius(speed, sidecutRadius, slope, beta, half);
  if (radius === null) return null;
  return told(
    'run.idealRadius',
    'run.title.idealRadius',
    'R',
    'R_sc * cos(atan(half * tan(alpha) * cos(beta)) + asin(v^2 / (g * R_sc * cos(alpha)) / sqrt(1 + (tan(alpha) * cos(beta))^2)))',
    'm',
    radius,
    [
      input('R_sc', 'R_{sc}', 'working.sidecutRadius', sidecutRadius, 'm', 'shape.radius'),
      input('v', 'v', 'working.speed', speed, 'm/s'),
      input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      input('alpha', '\\alpha', 'working.slopeAngle', slope, 'rad'),
      input('beta', '\\beta', 'run.traverseDirection', beta, 'rad'),
      input('half', '\\pm', 'run.half', half, '1'),
    ],
    {
      note: { key: 'run.note.solvedForR' },
      source: { key: 'source.idealCarve' },
    },
  );
}

/** Speed at which drag and friction balance the weight in a straight run. */
export function terminalSpeedWorking(run: StraightRun): Working {
  return told(
    'run.terminalSpeed',
    'run.title.terminalSpeed',
    'v_\\infty',
    'sqrt(max(0, 2 * m * g * (sin(alpha) - mu * cos(alpha)) / (rho * CdA)))',
    'm/s',
    terminalSpeed(run),
    [
      ...weightInputs(run),
      input('alpha', '\\alpha', 'working.slopeAngle', run.slope, 'rad'),
      input('mu', '\\mu', 'run.friction', run.friction, '1'),
      input('rho', '\\rho', 'working.airDensity', run.airDensity, 'kg/m^3'),
      input('CdA', 'C_dA', 'working.dragArea', run.dragArea, 'm^2'),
    ],
    { source: { key: 'source.straightRun' } },
  );
}

function pushInputs(q: ChainQuestion, m: TurnMoment): WorkingInput[] {
  return [
    ...weightInputs(q),
    input('v', 'v', 'working.skiSpeed', q.speed, 'm/s'),
    input('l', '\\ell', 'working.legLength', q.leg ?? 0, 'm'),
    input('psi', '\\psi', 'run.leanByPush', m.lean, 'rad'),
    input('alpha', '\\alpha', 'working.slopeAngle', q.slope, 'rad'),
    input('chi', '\\chi', 'working.heading', q.pastFallLine, 'rad'),
  ];
}

function weightInputs(of: { readonly mass: number }): WorkingInput[] {
  return [
    input('m', 'm', 'working.skierMass', of.mass, 'kg'),
    input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
  ];
}

function forces(m: TurnMoment): WorkingInput[] {
  return [
    input('F_lat', 'F_{lat}', 'run.sidewaysPush', m.sideways, 'N', 'run.sidewaysForce'),
    input('F_N', 'F_N', 'run.normalForce', m.normal, 'N', 'run.normalForce'),
  ];
}

function told(
  key: string,
  title: PlainKey,
  symbol: string,
  formula: string,
  unit: string,
  value: number,
  inputs: readonly WorkingInput[],
  rest: Pick<Working, 'source' | 'note'> & Partial<Pick<Working, 'status'>>,
): Working {
  return workingOf([key, title, symbol, formula], { inputs, value, unit, ...rest });
}
