import { USUAL } from '../conditions/index.ts';
import type { Gate } from './gates.ts';

/** Gates further apart than this down the hill are no slalom gates, m. Common practice, only a first guess. */
const slalomSpacing = 15;

/** Slalom or giant slalom, guessed from the middle spacing, so that one odd gate does not count. */
export function setDiscipline(gates: readonly Gate[]): 'SL' | 'GS' {
  const spacings = gates.slice(1).map((gate, i) => gate.y - gates[i].y);
  const middle = spacings.sort((a, b) => a - b)[Math.floor(spacings.length / 2)] ?? 0;
  return middle > slalomSpacing ? 'GS' : 'SL';
}

/** Where nobody says: the slope and the speed at the start that juniors know from gates of a discipline. */
export const USUAL_COURSE = {
  SL: { courseSlopeDeg: USUAL.courseSlopeDeg, courseSpeedKmh: USUAL.courseSpeedKmh },
  GS: { courseSlopeDeg: 16.5, courseSpeedKmh: 50 },
} as const;
