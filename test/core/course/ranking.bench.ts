import { bench } from 'vitest';
import { rankPairs, rhythmicSet } from '../../../core/course/index.ts';
import { cosineTurn } from '../../../core/run/index.ts';

const pairs = Array.from({ length: 80 }, (_, i) => ({
  name: `pair ${i + 1}`,
  turn: cosineTurn(11 + 0.25 * i),
  baseBevel: 0.01,
}));
const gates = rhythmicSet(60, 11, 3.2);

bench('80 pairs on 60 gates, with the small changes tried', () => {
  rankPairs(pairs, gates);
});
