/**
 * How the numbers of a solved rhythm hang together, at the moment the leg pushes hardest. The line itself is solved
 * and not a formula: what is shown is the balance that its numbers keep.
 */

import { quadrature } from '../numeric/index.ts';
import { GRAVITY } from '../skier/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import type { Rhythm } from './rhythm.ts';

const SOURCE = 'a mass on a leg above skis on their own path, least time between two gates';
/** Pieces the drop of the hill is summed in; how far energies summed stage by stage may fail to close. */
const DROP_PANELS = 60;
const ENERGY_SUMMED = 5e-4;

/** Workings of the pace and of the hardest moment. */
export function rhythmWorkings(rhythm: Rhythm): Working[] {
  const { run, question } = rhythm;
  const { conditions } = question;
  let row = 0;
  for (let k = 0; k < run.push.length; k++) if (run.push[k] > run.push[row]) row = k;
  const at = (column: Float64Array) => column[row];
  const moment = `${run.t[row].toFixed(2)} s after the gate, where the leg pushes hardest.`;
  const mass = value('m', 'm', 'skier with equipment', conditions.skier.mass, 'kg');
  const lean = value('psi', '\\psi', 'lean', Math.abs(at(run.lean)), 'rad');
  const edge = value('theta', '\\theta', 'edge angle', Math.abs(at(run.edge)), 'rad');
  const curvature = value(
    'kappa',
    '\\kappa',
    "curvature of the skis' path",
    Math.abs(at(run.curvature)),
    '1/m',
  );
  const massSpeed = value('u', 'u', "the mass's speed along the skis' path", at(run.massSpeed), 'm/s');
  const leg = value('leg', '\\ell', 'leg, from the skis to the mass', at(run.leg), 'm');
  const inward = Math.sign(at(run.lean)) === Math.sign(at(run.curvature)) ? 1 : -1;
  const cases: Working[] = [
    paceWorking(rhythm),
    working(
      'line.radius',
      "Radius of the skis' path",
      'R',
      '1 / kappa',
      1 / Math.abs(at(run.curvature)),
      'm',
      [curvature],
      moment,
    ),
    working(
      'line.skiSpeed',
      "The skis' speed",
      'v',
      'u / (1 - inward * leg * sin(psi) * kappa)',
      at(run.speed),
      'm/s',
      [
        massSpeed,
        leg,
        lean,
        curvature,
        value('inward', 'j', '1 where the mass leans into the turn, −1 where out of it', inward, '1'),
      ],
      `${moment} The skis go the longer way round.`,
    ),
    working(
      'line.load',
      'Load on the snow',
      'F',
      'f * m * g',
      at(run.push) * conditions.skier.mass * GRAVITY,
      'N',
      [
        value('f', 'f', "the leg's push over the weight", at(run.push), '1'),
        mass,
        value('g', 'g', 'standard gravity', GRAVITY, 'm/s^2'),
      ],
      moment,
    ),
    working(
      'line.hold',
      'Grip to spare',
      'h',
      'theta - b - psi',
      at(run.hold),
      'rad',
      [
        edge,
        value('b', 'b', 'base bevel', conditions.baseBevel, 'rad'),
        value('psi', '\\psi', 'lean towards the edge', Math.sign(at(run.edge)) * at(run.lean), 'rad'),
      ],
      `${moment} The shelf bears up to one degree beyond it.`,
    ),
  ];
  return cases;
}

/** The pace, and the balance that a rhythm which goes on for ever keeps between two gates. */
function paceWorking({ run, question, secondsPerGate, meanSpeed, answer, iterations }: Rhythm): Working {
  const { conditions, spacing } = question;
  const { friction, scrape, drag, legs } = run.energy;
  const drop = quadrature(y => conditions.slope.sine(y), 0, spacing, DROP_PANELS) / spacing;
  const told = working(
    'line.meanSpeed',
    'Mean speed down the hill',
    '\\bar v',
    's / T',
    meanSpeed,
    'm/s',
    [
      value('s', 's', 'distance of the gates down the hill', spacing, 'm'),
      value('T', 'T', 'time from gate to gate, solved', secondsPerGate, 's'),
      value('g', 'g', 'standard gravity', GRAVITY, 'm/s^2'),
      value(
        'drop',
        '\\langle \\sin\\alpha\\rangle',
        'mean drop of the hill for each metre along it',
        drop,
        '1',
      ),
      value('W_legs', 'w_{legs}', 'given by the legs, for each kg', legs, 'J/kg'),
      value('W_mu', 'w_\\mu', 'lost to friction, for each kg', friction, 'J/kg'),
      value('W_D', 'w_D', 'lost to the air, for each kg', drag, 'J/kg'),
      value('W_scrape', 'w_{scrape}', 'lost to scraping edges, for each kg', scrape, 'J/kg'),
    ],
    'The quickest path from gate to gate that keeps the balance of skier and skis at every place: its equations close ' +
      `to ${answer.violation.toExponential(0)} and its conditions of an optimum to ${answer.error.toExponential(0)}. ` +
      'Energies are summed in the middle of each stage.',
  );
  return {
    ...told,
    solved: {
      by: `for T and the whole path in ${iterations} steps of an interior-point method`,
      of: 'what hill and legs give between two gates and what is lost there, the speed being the same at both',
      left: 'g * s * drop + W_legs',
      right: 'W_mu + W_D + W_scrape',
      unit: 'J/kg',
      within: ENERGY_SUMMED,
    },
  };
}

function value(name: string, symbol: string, meaning: string, of: number, unit: string): WorkingInput {
  return { name, symbol, meaning, value: of, unit };
}

function working(
  key: string,
  title: string,
  symbol: string,
  formula: string,
  result: number,
  unit: string,
  inputs: readonly WorkingInput[],
  note: string,
): Working {
  return {
    key,
    title,
    symbol,
    formula,
    inputs,
    result: { value: result, unit },
    note,
    source: SOURCE,
    status: 'derived',
  };
}
