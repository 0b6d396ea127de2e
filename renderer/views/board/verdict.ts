import { holdingEdge, holdingSpeed } from '../../../core/run/index.ts';
import { DEGREE, formatQuantity, type System } from '../../../core/units/index.ts';
import type { BoardAnswer } from '../../answers/index.ts';

/** Beyond this nobody skis, m/s: grip is not said to end there. */
const NEVER = 60;

/** Whether it carves, the speed at which grip ends, and the best remedy: one sentence to read across a room. */
export function verdictOf(
  { question, slides }: Pick<BoardAnswer, 'question' | 'slides'>,
  system: System,
): string {
  const ends = holdingSpeed(question);
  const speed = (value: number) => formatQuantity(value, 'speed', { system, decimals: 0 });
  if (!slides) return ends > NEVER ? 'Carves at any speed.' : `Carves: grip ends at ${speed(ends).text}.`;
  const remedies = [`slow down ${speed(question.speed - ends).value}`];
  const edge = holdingEdge(question);
  if (edge !== null) {
    const turn = Math.max(1, Math.ceil(Math.abs(edge - question.edgeAngle) / DEGREE));
    remedies.push(`tip ${turn}° ${edge > question.edgeAngle ? 'more' : 'less'}`);
  }
  return `Slides: grip ends at ${speed(ends).text}. To carve, ${remedies.join(' or ')}.`;
}
