import { bench } from 'vitest';
import { quickLine, rhythmicSet } from '../../../core/course/index.ts';
import { cosineTurn } from '../../../core/run/index.ts';

const gates = rhythmicSet(60, 10, 3);

bench(
  'quick line through 60 slalom gates',
  () => {
    quickLine({ gates, turn: cosineTurn(13), conditions: { startSpeed: 9 } });
  },
  { iterations: 2, warmupIterations: 0, time: 0, warmupTime: 0 },
);
