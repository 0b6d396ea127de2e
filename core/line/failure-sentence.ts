import type { Sentence } from '../language/index.ts';
import { limitSentence, tiesTheEnds } from '../skier/index.ts';
import type { LineFailure } from './rhythm.ts';

/** Why there is no quickest turn through these gates. */
export function rhythmFailureSentence({ reason, limit, at }: LineFailure): Sentence {
  if (reason === 'cancelled') return { key: 'line.stopped' };
  const why = limitSentence(limit);
  const what: Sentence = tiesTheEnds(limit)
    ? { key: 'line.noPaceKept' }
    : { key: at < 0.25 || at > 0.75 ? 'line.limitAtGate' : 'line.limitBetweenGates', values: { why } };
  return { key: 'line.noSuchTurn', values: { what } };
}

/** Why there is no quickest run through a set. */
export function runFailureSentence({ reason, limit, at }: LineFailure): Sentence {
  if (reason === 'cancelled') return { key: 'line.runStopped' };
  const part = Math.round(100 * at);
  return { key: 'line.noRun', values: { why: limitSentence(limit), part } };
}
