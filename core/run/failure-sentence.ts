import type { Sentence } from '../language/index.ts';
import { limitSentence, tiesTheEnds } from '../skier/index.ts';
import type { RunFailure } from './solve-run.ts';

/** Why there is no run: which limit cannot be kept, where, and what may help. */
export function runFailureSentence({ reason, limit, at }: RunFailure, kind: 'edge' | 'banked'): Sentence {
  if (reason === 'cancelled') return { key: 'run.stopped' };
  const what: Sentence = tiesTheEnds(limit)
    ? { key: 'run.cannotSetOff' }
    : {
        key: 'run.limitAt',
        values: { at: { quantity: 'time', value: at, decimals: 1 }, why: limitSentence(limit) },
      };
  const ease: Sentence = { key: kind === 'banked' ? 'run.easeBanked' : 'run.ease' };
  return { key: 'run.noSuchRun', values: { what, ease } };
}
