import type { Sentence } from '../language/index.ts';
import type { Ski } from '../pair/index.ts';
import type { GrooveWall, OwnCurvature } from '../skier/index.ts';
import type { GrooveCase } from './ski-changes.ts';

/** A pair and what it does in the snow of the day. */
export interface PairOnSnow {
  readonly ski: Ski;
  readonly surface: OwnCurvature & GrooveWall;
  /** The ski in its groove; null where its turns follow the cosine rule. */
  readonly groove: GrooveCase | null;
  /** By the cosine rule for want of a stiffness, not because it was asked. */
  readonly stiffnessUnknown: boolean;
  /** Why it is not to be picked, as a part of a sentence; it is timed all the same. */
  readonly barred?: Sentence;
}
