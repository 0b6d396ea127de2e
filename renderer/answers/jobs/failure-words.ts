import type { LineFailure } from '../../../core/line/index.ts';
import type { RunFailure } from '../../../core/run/index.ts';
import type { RunPlan } from './run-plan.ts';

/** Limits and equations of a run by the names the solvers give them, as a sentence's end after "cannot be kept:". */
const CANNOT: Readonly<Record<string, string>> = {
  hold: 'the edge would have to carry more lean than its angle does',
  wall: 'the wall of snow the edge leans on breaks',
  leg: 'the legs would have to fold or stretch beyond their length',
  'leg speed': 'the legs would have to fold or stretch faster than they can',
  push: 'the legs would have to push harder than they can, or pull on the snow',
  'push rate': 'the push of the legs would have to change faster than it can',
  lean: 'the skier would have to lie down',
  'lean rate': 'the skier would fall over before the skis are under the mass again',
  speed: 'the skier comes to a stop',
  mismatch: 'the skis would have to turn tighter than the leg is long',
  heading: 'the skis do not come round',
  'edge angle': 'the skis would have to be tipped further than the skier can',
  'edge rate': 'the skis would have to be tipped faster than the skier can',
  drift: 'the skis would have to be turned across their path further than they can',
  'offset from the line': 'the skis do not get past the pole',
  'heading from the line': 'the skis do not come round',
  angulation: 'the body would have to bend sideways further than it can',
  'angulation backward': 'the body would have to bend sideways further than it can',
  'centre of the turn': 'the mass would have to cross the centre of the turn',
  'length of the turn': 'a turn would last too short or too long a time',
  pull: 'the skis leave the snow and do not come back in balance',
};

/** Conditions that tie the beginning to the end have a number, not a place. */
const tiesTheEnds = (limit: string): boolean => limit.startsWith('end condition');

/** In words that a person can act on; by the solver's own name where none is known. */
const why = (limit: string): string => CANNOT[limit] ?? `“${limit}” cannot be kept`;

/** Why there is no run: which limit cannot be kept, where, and what may help. */
export function runFailureWords(failure: RunFailure, { programme }: Pick<RunPlan, 'programme'>): string {
  if (failure.reason === 'cancelled') return 'The run was stopped before it was found.';
  const ease =
    programme.kind === 'banked'
      ? 'A slower start, a gentler slope or turns that change side earlier may help.'
      : 'Less speed, another edge angle, a gentler slope or more time for a turn may help.';
  const what = tiesTheEnds(failure.limit)
    ? 'the skier cannot set off like this and stay in balance to the end'
    : `${failure.at.toFixed(1)} s after the start ${why(failure.limit)}`;
  return `There is no such run: ${what}. ${ease}`;
}

/** Why there is no quickest turn through these gates. */
export function rhythmFailureWords(failure: LineFailure): string {
  if (failure.reason === 'cancelled') return 'The turn was stopped before it was found.';
  const where = failure.at < 0.25 || failure.at > 0.75 ? 'at the gate' : 'half-way between two gates';
  const what = tiesTheEnds(failure.limit)
    ? 'no pace can be kept from gate to gate'
    : `${where} ${why(failure.limit)}`;
  return `No turn through these gates was found: ${what}. Gates further apart, less offset, a steeper slope or a stronger skier may help.`;
}
