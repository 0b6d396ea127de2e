/**
 * How the numbers of a solved rhythm hang together, at the moment the leg pushes hardest. The line itself is solved
 * and not a formula: what is shown is the balance that its numbers keep.
 */

import type { PlainKey, Sentence } from '../language/index.ts';
import { quadrature } from '../numeric/index.ts';
import { GRAVITY } from '../skier/index.ts';
import { input, type Working, type WorkingInput } from '../working/index.ts';
import type { Rhythm } from './rhythm.ts';

const SOURCE = { key: 'source.quickestTurn' } as const;
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
  const moment: Sentence = {
    key: 'line.note.hardest',
    values: { time: { quantity: 'time', value: run.t[row] } },
  };
  const mass = input('m', 'm', 'working.skierMass', conditions.skier.mass, 'kg');
  const lean = input('psi', '\\psi', 'working.lean', Math.abs(at(run.lean)), 'rad');
  const edge = input('theta', '\\theta', 'working.edgeAngle', Math.abs(at(run.edge)), 'rad');
  const curvature = input('kappa', '\\kappa', 'working.pathCurvature', Math.abs(at(run.curvature)), '1/m');
  const massSpeed = input('u', 'u', 'run.massSpeed', at(run.massSpeed), 'm/s');
  const leg = input('leg', '\\ell', 'working.legLength', at(run.leg), 'm');
  const inward = Math.sign(at(run.lean)) === Math.sign(at(run.curvature)) ? 1 : -1;
  const cases: Working[] = [
    paceWorking(rhythm),
    working(
      'line.radius',
      'run.title.pathRadius',
      'R',
      '1 / kappa',
      1 / Math.abs(at(run.curvature)),
      'm',
      [curvature],
      moment,
    ),
    working(
      'line.skiSpeed',
      'line.title.skiSpeed',
      'v',
      'u / (1 - inward * leg * sin(psi) * kappa)',
      at(run.speed),
      'm/s',
      [massSpeed, leg, lean, curvature, input('inward', 'j', 'line.inward', inward, '1')],
      [moment, { key: 'line.note.longerWay' }],
    ),
    working(
      'line.load',
      'line.title.load',
      'F',
      'f * m * g',
      at(run.push) * conditions.skier.mass * GRAVITY,
      'N',
      [
        input('f', 'f', 'line.push', at(run.push), '1'),
        mass,
        input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      ],
      moment,
    ),
    working(
      'line.hold',
      'line.title.hold',
      'h',
      'theta - b - psi',
      at(run.hold),
      'rad',
      [
        edge,
        input('b', 'b', 'working.baseBevel', conditions.baseBevel, 'rad'),
        input('psi', '\\psi', 'working.leanTowardsEdge', Math.sign(at(run.edge)) * at(run.lean), 'rad'),
      ],
      [moment, { key: 'line.note.shelf' }],
    ),
  ];
  return cases;
}

/** The pace, and the balance that a rhythm which goes on for ever keeps between two gates. */
function paceWorking({ run, question, secondsPerGate, meanSpeed, answer, iterations }: Rhythm): Working {
  const { conditions, spacing } = question;
  const { friction, scrape, drag, legs } = run.energy;
  const drop = quadrature(y => conditions.slope.sine(y), 0, spacing, DROP_PANELS) / spacing;
  const reported = working(
    'line.meanSpeed',
    'line.title.meanSpeed',
    '\\bar v',
    's / T',
    meanSpeed,
    'm/s',
    [
      input('s', 's', 'line.gateDistance', spacing, 'm'),
      input('T', 'T', 'line.gateTime', secondsPerGate, 's'),
      input('g', 'g', 'working.gravity', GRAVITY, 'm/s^2'),
      input('drop', '\\langle \\sin\\alpha\\rangle', 'line.meanDrop', drop, '1'),
      input('W_legs', 'w_{legs}', 'line.legsGive', legs, 'J/kg'),
      input('W_mu', 'w_\\mu', 'line.frictionTakes', friction, 'J/kg'),
      input('W_D', 'w_D', 'line.airTakes', drag, 'J/kg'),
      input('W_scrape', 'w_{scrape}', 'line.scrapeTakes', scrape, 'J/kg'),
    ],
    {
      key: 'line.note.pace',
      values: { violation: answer.violation.toExponential(0), error: answer.error.toExponential(0) },
    },
  );
  return {
    ...reported,
    solved: {
      by: { key: 'line.by.interiorPoint', values: { steps: iterations } },
      of: { key: 'line.of.energy' },
      left: 'g * s * drop + W_legs',
      right: 'W_mu + W_D + W_scrape',
      unit: 'J/kg',
      within: ENERGY_SUMMED,
    },
  };
}

function working(
  key: string,
  title: PlainKey,
  symbol: string,
  formula: string,
  result: number,
  unit: string,
  inputs: readonly WorkingInput[],
  note: Working['note'],
): Working {
  return {
    key,
    title: { key: title },
    symbol,
    formula,
    inputs,
    result: { value: result, unit },
    note,
    source: SOURCE,
    status: 'derived',
  };
}
