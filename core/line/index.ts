export type { LineConditions, Slope } from './conditions.ts';
export { rhythmFailureSentence, runFailureSentence } from './failure-sentence.ts';
export { type ManyRanking, type RhythmPlace, rankMany } from './few-by-rhythm.ts';
export { type GateReading, gapAlong, gateReadings } from './gate-by-gate.ts';
export { HELD_BACK_WORDS, heldBackSentence } from './held-back-words.ts';
export { HELD_BACK_BY, type HeldBackBy, type LineRun } from './line-run.ts';
export type { PairOnSnow } from './pair-on-snow.ts';
export { type ChangeWorth, changeWorths, type Inputs } from './realistic-changes.ts';
export {
  type LineFailure,
  type LineOptions,
  type Rhythm,
  type RhythmQuestion,
  rhythm,
} from './rhythm.ts';
export type { SetQuestion, TurningPole } from './set-question.ts';
export {
  type RankingQuestion,
  rankByQuickestRun,
  type SetRanking,
  type TimedPair,
  type UntimedPair,
} from './set-ranking.ts';
export { quickestRun, type SetOptions, type SetRun } from './set-run.ts';
export {
  type GrooveCase,
  type SkiChange,
  type SkiWorth,
  skiWorths,
} from './ski-changes.ts';
export { whatIf } from './what-if.ts';
export { rhythmWorkings } from './working.ts';
export { type GrooveWorth, type LineWorth, type Worth, worthOf, worthOfCurvature } from './worth.ts';
