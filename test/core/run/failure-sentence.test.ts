import { expect, test } from 'vitest';
import { type Sentence, say } from '../../../core/language/index.ts';
import { type LineFailure, rhythmFailureSentence } from '../../../core/line/index.ts';
import { type RunFailure, runFailureSentence } from '../../../core/run/index.ts';

const run: RunFailure = { ok: false, reason: 'cannot be kept', limit: 'leg speed', at: 1.234, by: 1 };
const turn: LineFailure = { ok: false, reason: 'no feasible step', limit: 'edge angle', at: 0.5 };

test.each<[Sentence, RegExp]>([
  [
    runFailureSentence(run, 'edge'),
    /^There is no such run: 1\.2\ss after the start the legs would have to .* faster than they can\. Less speed/,
  ],
  [runFailureSentence(run, 'banked'), / A slower start, a gentler slope/],
  [runFailureSentence({ ...run, reason: 'cancelled' }, 'edge'), /stopped/],
  [rhythmFailureSentence(turn), /half-way between two gates the skis would have to be tipped further/],
  [rhythmFailureSentence({ ...turn, at: 0.01 }), /at the gate/],
  [rhythmFailureSentence({ ...turn, limit: 'end condition 3' }), /no pace can be kept/],
  [runFailureSentence({ ...run, limit: 'equations of motion' }, 'edge'), /cannot be followed/],
  [rhythmFailureSentence({ ...turn, limit: 'something new' }), /“something new” cannot be kept/],
])('what cannot be kept is told: the limit, where, and what may help (%j)', (sentence, words) => {
  expect(say(sentence)).toMatch(words);
});
