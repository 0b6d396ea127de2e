import type { PlainKey, Sentence } from '../language/index.ts';

/** Limits and equations of runs and lines, by the names the solvers give them. */
const SENTENCES: Readonly<Record<string, PlainKey>> = {
  hold: 'limit.hold',
  wall: 'limit.wall',
  leg: 'limit.leg',
  'leg speed': 'limit.legSpeed',
  push: 'limit.push',
  'push rate': 'limit.pushRate',
  lean: 'limit.lean',
  'lean rate': 'limit.leanRate',
  speed: 'limit.speed',
  mismatch: 'limit.mismatch',
  heading: 'limit.heading',
  'edge angle': 'limit.edgeAngle',
  'edge rate': 'limit.edgeRate',
  drift: 'limit.drift',
  'offset from the line': 'limit.offset',
  'heading from the line': 'limit.heading',
  angulation: 'limit.angulation',
  'angulation backward': 'limit.angulation',
  'centre of the turn': 'limit.centre',
  'length of the turn': 'limit.length',
  pull: 'limit.pull',
  'equations of motion': 'limit.motion',
};

/** What would have to be where a limit cannot be kept; by the solver's own name where none is known. */
export function limitSentence(limit: string): Sentence {
  return Object.hasOwn(SENTENCES, limit)
    ? { key: SENTENCES[limit]! }
    : { key: 'limit.notKept', values: { limit } };
}

/** Conditions that tie the beginning to the end have a number, not a place. */
export const tiesTheEnds = (limit: string): boolean => limit.startsWith('end condition');
