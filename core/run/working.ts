/**
 * The coach's chain told link by link: edge angle → radius → sideways push → lean → grip to spare.
 */

import { cosineRadiusWorking } from '../carve/index.ts';
import type { SourceStatus, Working, WorkingInput } from '../working/index.ts';
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

const BALANCE = 'balance of a mass on a leg in a steady turn, in the frame of the slope';
const SHELF =
  'the shelf cut by the base carries what leans less than it; compare Brown, On the skiability of snow, ASTM STP 1022 (1989), critical edge angle 40–70° (seen)';

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
      'Turn radius of this pair',
      'R',
      '',
      'm',
      m.radius,
      [
        input('theta', '\\theta', 'edge angle', q.edgeAngle, 'rad'),
        input(
          'F_outer',
          's F',
          "outer ski's part of the load, at which its radius was read",
          m.outerLoad,
          'N',
        ),
        input('s', 's', "outer ski's part", q.outerShare, '1'),
        ...pushInputs(q, m),
      ],
      {
        note: 'Radius and load are solved together: a tighter turn presses harder, and a ski pressed harder bends further. Without a solved groove this is the cosine rule.',
        source: 'equilibrium of the bent ski in its groove, or R = R_sc cosθ (from memory)',
      },
    ),
    solved: {
      of: 'the load that a turn of this radius puts on the outer ski, and the load at which the ski turns it',
      by: 'in turn: the radius at a load, and the load on that radius, until neither changes',
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
    'Force square to the slope',
    'F_N',
    'm * g * cos(alpha)',
    'N',
    m.normal,
    [...weightInputs(q), input('alpha', '\\alpha', 'slope angle', q.slope, 'rad')],
    { source: BALANCE },
  );
}

function sidewaysWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.sidewaysForce',
    'Sideways push at this speed',
    'F_{lat}',
    PUSH,
    'N',
    m.sideways,
    [...pushInputs(q, m), input('R', 'R', 'turn radius', m.radius, 'm', 'run.radius')],
    {
      source: BALANCE,
      note: 'The mass leans into the turn and goes round on a smaller circle than the skis, so it asks for less. Before the fall line the weight helps the turn; after it the weight adds to the push.',
    },
  );
}

function leanWorking(m: TurnMoment): Working {
  return told('run.lean', 'Lean to balance', '\\psi', 'atan2(F_lat, F_N)', 'rad', m.lean, forces(m), {
    source: BALANCE,
  });
}

function loadWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.load',
    'Force between skis and snow',
    'F',
    'm * g * cos(alpha) / cos(psi)',
    'N',
    m.load,
    [
      ...weightInputs(q),
      input('alpha', '\\alpha', 'slope angle', q.slope, 'rad'),
      input('psi', '\\psi', 'lean', m.lean, 'rad', 'run.lean'),
    ],
    { source: BALANCE, note: `That is ${balancedLoad(m.lean, q.slope).toFixed(2)} times the weight.` },
  );
}

function angulationWorking(q: ChainQuestion, m: TurnMoment): Working {
  return told(
    'run.angulation',
    'Angulation',
    '\\gamma',
    'theta - psi',
    'rad',
    m.angulation,
    [
      input('theta', '\\theta', 'edge angle', q.edgeAngle, 'rad'),
      input('psi', '\\psi', 'lean', m.lean, 'rad', 'run.lean'),
    ],
    { source: 'tilt of the skis beyond the lean of the body', status: 'definition' },
  );
}

function holdWorking(q: ChainQuestion, m: TurnMoment): Working {
  const words = coachWords(q);
  return told(
    'run.hold',
    'Grip to spare under the boot',
    'h',
    'theta - b - psi',
    'rad',
    m.hold,
    [
      input('theta', '\\theta', 'edge angle', q.edgeAngle, 'rad'),
      input('b', 'b', 'base bevel', q.baseBevel, 'rad'),
      input('psi', '\\psi', 'lean', m.lean, 'rad', 'run.lean'),
    ],
    { source: SHELF, note: [words.verdict, ...words.changes] },
  );
}

function holdingSpeedWorking(q: ChainQuestion): Working {
  const speed = holdingSpeed(q);
  const load = (q.mass * GRAVITY * Math.cos(q.slope)) / Math.cos(Math.max(0, q.edgeAngle - q.baseBevel));
  return told(
    'run.holdingSpeed',
    'Speed at which grip ends',
    'v_h',
    `sqrt(max(0, R * g * (cos(alpha) * tan(max(0, theta - b)) - sin(alpha) * sin(chi))) / max(${AT_THE_CENTRE}, 1 - l * sin(max(0, theta - b)) / R))`,
    'm/s',
    speed,
    [
      input(
        'R',
        'R',
        'turn radius at the load of the limit',
        q.turn.radius(q.edgeAngle, q.outerShare * load),
        'm',
      ),
      input('g', 'g', 'gravity', GRAVITY, 'm/s^2'),
      input('l', '\\ell', 'leg, skis to the mass', q.leg ?? 0, 'm'),
      input('alpha', '\\alpha', 'slope angle', q.slope, 'rad'),
      input('theta', '\\theta', 'edge angle', q.edgeAngle, 'rad'),
      input('b', 'b', 'base bevel', q.baseBevel, 'rad'),
      input('chi', '\\chi', 'direction past the fall line (negative before it)', q.pastFallLine, 'rad'),
    ],
    { source: SHELF },
  );
}

/** Speed no unangulated carve exceeds on level ground. */
export function speedCeilingWorking(sidecutRadius: number): Working {
  return told(
    'run.speedCeiling',
    'Ceiling of the unangulated carve',
    'v_{max}',
    'sqrt(g * R_sc)',
    'm/s',
    speedCeiling(sidecutRadius),
    [
      input('g', 'g', 'gravity', GRAVITY, 'm/s^2'),
      input('R_sc', 'R_{sc}', 'sidecut radius', sidecutRadius, 'm', 'shape.radius'),
    ],
    { source: 'level ground, edge angle equal to lean, R = R_sc cosθ' },
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
    'Turn radius of the ideal carve',
    'R',
    'R_sc * cos(atan(half * tan(alpha) * cos(beta)) + asin(v^2 / (g * R_sc * cos(alpha)) / sqrt(1 + (tan(alpha) * cos(beta))^2)))',
    'm',
    radius,
    [
      input('R_sc', 'R_{sc}', 'sidecut radius', sidecutRadius, 'm', 'shape.radius'),
      input('v', 'v', 'speed', speed, 'm/s'),
      input('g', 'g', 'gravity', GRAVITY, 'm/s^2'),
      input('alpha', '\\alpha', 'slope angle', slope, 'rad'),
      input('beta', '\\beta', 'direction from the horizontal traverse', beta, 'rad'),
      input('half', '\\pm', '+1 after the fall line, −1 before', half, '1'),
    ],
    {
      note: 'The equation above, solved for R.',
      source: 'after Jentschura & Fahrbach, Can. J. Phys. 82 (2004) 249–261 (abstract seen)',
    },
  );
}

/** Speed at which drag and friction balance the weight in a straight run. */
export function terminalSpeedWorking(run: StraightRun): Working {
  return told(
    'run.terminalSpeed',
    'Terminal speed of the straight run',
    'v_\\infty',
    'sqrt(max(0, 2 * m * g * (sin(alpha) - mu * cos(alpha)) / (rho * CdA)))',
    'm/s',
    terminalSpeed(run),
    [
      ...weightInputs(run),
      input('alpha', '\\alpha', 'slope angle', run.slope, 'rad'),
      input('mu', '\\mu', 'coefficient of friction', run.friction, '1'),
      input('rho', '\\rho', 'air density', run.airDensity, 'kg/m^3'),
      input('CdA', 'C_dA', 'drag area', run.dragArea, 'm^2'),
    ],
    { source: 'balance of weight, friction and drag' },
  );
}

function pushInputs(q: ChainQuestion, m: TurnMoment): WorkingInput[] {
  return [
    ...weightInputs(q),
    input('v', 'v', 'speed of the skis', q.speed, 'm/s'),
    input('l', '\\ell', 'leg, skis to the mass', q.leg ?? 0, 'm'),
    input('psi', '\\psi', 'lean, which this push brings about and which shortens its circle', m.lean, 'rad'),
    input('alpha', '\\alpha', 'slope angle', q.slope, 'rad'),
    input('chi', '\\chi', 'direction past the fall line (negative before it)', q.pastFallLine, 'rad'),
  ];
}

function weightInputs(of: { readonly mass: number }): WorkingInput[] {
  return [
    input('m', 'm', 'skier with equipment', of.mass, 'kg'),
    input('g', 'g', 'gravity', GRAVITY, 'm/s^2'),
  ];
}

function forces(m: TurnMoment): WorkingInput[] {
  return [
    input('F_lat', 'F_{lat}', 'sideways push', m.sideways, 'N', 'run.sidewaysForce'),
    input('F_N', 'F_N', 'force square to the slope', m.normal, 'N', 'run.normalForce'),
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

function told(
  key: string,
  title: string,
  symbol: string,
  formula: string,
  unit: string,
  value: number,
  inputs: readonly WorkingInput[],
  rest: { readonly source: string; readonly status?: SourceStatus; readonly note?: Working['note'] },
): Working {
  const { source, status = 'derived', note } = rest;
  const working = { key, title, symbol, formula, inputs, result: { value, unit }, source, status };
  return note === undefined ? working : { ...working, note };
}
