import type { PlainKey, Sentence } from '../language/index.ts';
import type { HeldBackBy, LineRun } from './line-run.ts';

/** What holds a skier back, as a coach calls it. */
export const HELD_BACK_WORDS: Readonly<Record<HeldBackBy, PlainKey>> = {
  nothing: 'heldBack.nothing',
  push: 'heldBack.push',
  'push rate': 'heldBack.pushRate',
  'leg speed': 'heldBack.legSpeed',
  'leg length': 'heldBack.legLength',
  'edge angle': 'heldBack.edgeAngle',
  'edge rate': 'heldBack.edgeRate',
  hold: 'heldBack.hold',
  wall: 'heldBack.wall',
  angulation: 'heldBack.angulation',
  drift: 'heldBack.drift',
};

/** Limits beside the dearest are named where they are worth this share of it. */
const WORTH_NAMING = 0.2;
const MOST_NAMED = 3;

/** "held back by strength and grip": what one per cent more of would save most. */
export function heldBackSentence({ limits }: Pick<LineRun, 'limits'>): Sentence {
  const [first] = limits;
  const named = limits
    .filter(({ seconds }) => seconds >= WORTH_NAMING * first.seconds)
    .slice(0, MOST_NAMED)
    .map(({ by }): Sentence => ({ key: HELD_BACK_WORDS[by] }));
  return named.length > 0 ? { key: 'heldBack.by', values: { limits: named } } : { key: 'heldBack.nothing' };
}
