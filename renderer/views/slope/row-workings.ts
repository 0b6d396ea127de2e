import type { Quantity } from '../../../core/language/index.ts';
import { dynamicHoldWorking, dynamicLoadWorking, dynamicMoment } from '../../../core/run/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { groundOf, type PairRun } from '../../answers/index.ts';

/** The load at a row of the run, worked out anew from the rows beside. */
export function loadWorking(run: PairRun, row: number): Working {
  const working = dynamicLoadWorking(questionAbout(run, row));
  return {
    ...working,
    key: 'run.rowLoad',
    title: { key: 'run.title.loadAt', values: { time: timeOf(run, row) } },
  };
}

/** Hold under the boot at a row of the run. */
export function holdWorking(run: PairRun, row: number): Working {
  const working = dynamicHoldWorking(questionAbout(run, row));
  return {
    ...working,
    key: 'run.rowHold',
    title: { key: 'run.title.holdAt', values: { time: timeOf(run, row) } },
  };
}

const timeOf = ({ track }: PairRun, row: number): Quantity => ({ quantity: 'time', value: track.t[row]! });

function questionAbout({ plan, track }: PairRun, row: number) {
  const { mass } = plan;
  const moment = dynamicMoment(track, row, { profile: groundOf(plan.ground), mass });
  // Skis that follow the lean have their base-edge face tilted with it, whatever the bevel.
  return { moment, mass, baseBevel: plan.programme.kind === 'banked' ? 0 : plan.baseBevel };
}
