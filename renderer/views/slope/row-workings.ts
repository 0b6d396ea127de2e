import { GRAVITY } from '../../../core/run/index.ts';
import type { Working, WorkingInput } from '../../../core/working/index.ts';
import { questionAt } from './moment.ts';
import { groundOf } from './run-plan.ts';
import type { PairRun } from './runs.ts';

const SOURCE =
  'balance of a point mass in the frame of the slope, with the drift of the ski and the bend of the ground';

/** The load at a row of the run, from what the track says there. */
export function loadWorking(run: PairRun, row: number): Working {
  return {
    key: 'run.rowLoad',
    title: `Load at ${run.track.t[row]!.toFixed(2)} s`,
    symbol: 'F',
    tex: 'F = \\sqrt{F_N^2 + \\min(F_{lat}/\\cos\\delta,\\; F_N \\tan(\\max(0, \\theta - b)))^2}',
    formula: 'sqrt(F_N^2 + min(F_lat / cos(delta), F_N * tan(max(0, theta - b)))^2)',
    inputs: inputsAt(run, row),
    result: { value: run.track.load[row]!, unit: 'N' },
    note: `That is ${run.track.loadBodyWeights[row]!.toFixed(2)} times the weight. Where the ski slides, the shelf gives no more than its slope carries.`,
    source: SOURCE,
    status: 'derived',
  };
}

/** Hold under the boot at a row of the run. */
export function holdWorking(run: PairRun, row: number): Working {
  return {
    key: 'run.rowHold',
    title: `Hold under the boot at ${run.track.t[row]!.toFixed(2)} s`,
    symbol: 'h',
    tex: 'h = \\theta - b - \\operatorname{atan2}(F_{lat}/\\cos\\delta,\\; F_N)',
    formula: 'theta - b - atan2(F_lat / cos(delta), F_N)',
    inputs: inputsAt(run, row),
    result: { value: run.track.hold[row]!, unit: 'rad' },
    source: SOURCE,
    status: 'derived',
  };
}

function inputsAt(run: PairRun, row: number): WorkingInput[] {
  const { track, plan } = run;
  const { slope, pastFallLine, edgeAngle } = questionAt(run, row);
  const { mass } = plan;
  const speed = track.speed[row]!;
  const down = Math.cos(track.heading[row]!);
  const bend = groundOf(plan.ground).curvature(track.y[row]!) * down * down;
  const normal = mass * (GRAVITY * Math.cos(slope) + speed * speed * bend);
  const sideways =
    (mass * speed * speed) / track.radius[row]! + mass * GRAVITY * Math.sin(slope) * Math.sin(pastFallLine);
  // Ideal carving tilts the base-edge face itself with the lean, whatever the bevel.
  const bevel = plan.programme.kind === 'banked' ? 0 : plan.baseBevel;
  return [
    {
      name: 'F_N',
      symbol: 'F_N',
      meaning: 'force square to the slope, with the bend of the ground',
      value: normal,
      unit: 'N',
    },
    {
      name: 'F_lat',
      symbol: 'F_{lat}',
      meaning: `sideways force of a ${track.radius[row]!.toFixed(2)} m turn at ${(3.6 * speed).toFixed(1)} km/h`,
      value: sideways,
      unit: 'N',
    },
    {
      name: 'delta',
      symbol: '\\delta',
      meaning: 'drift: the ski ahead of its way',
      value: track.drift[row]!,
      unit: 'rad',
    },
    { name: 'theta', symbol: '\\theta', meaning: 'edge angle', value: edgeAngle, unit: 'rad' },
    { name: 'b', symbol: 'b', meaning: 'base bevel', value: bevel, unit: 'rad' },
  ];
}
