import type { Sentence } from '../../../core/language/index.ts';
import { holdingEdge, holdingSpeed } from '../../../core/run/index.ts';
import { DEGREE } from '../../../core/units/index.ts';
import type { BoardAnswer } from '../../answers/index.ts';

/** Beyond this nobody skis, m/s: grip is not said to end there. */
const NEVER = 60;

/** Whether it carves, the speed at which grip ends, and the best remedy: one sentence to read across a room. */
export function verdictOf({ question, slides }: Pick<BoardAnswer, 'question' | 'slides'>): Sentence {
  const ends = holdingSpeed(question);
  const speed = { quantity: 'speed', value: ends, decimals: 0 } as const;
  if (!slides) {
    return ends > NEVER ? { key: 'board.carvesAlways' } : { key: 'board.carvesTo', values: { speed } };
  }
  const slower = { ...speed, value: question.speed - ends, bare: true } as const;
  const edge = holdingEdge(question);
  if (edge === null) return { key: 'board.slidesSlowDown', values: { speed, slower } };
  const turn = Math.max(1, Math.ceil(Math.abs(edge - question.edgeAngle) / DEGREE));
  const way = edge > question.edgeAngle ? 'more' : 'less';
  return { key: 'board.slidesSlowDownOrTip', values: { speed, slower, turn, way } };
}
