/**
 * Everything derived from the project, once. A view asks here and shows what it is told; no view asks another.
 */
export {
  asked,
  askedLoad,
  LEAST_EDGE,
  LEAST_LOAD,
  MOST_EDGE,
  MOST_LOAD,
} from './asked.ts';
export { type Balance, balanceIn } from './balance.ts';
export { type Bendable, beamOf, bendable, flatTableOf, unitBench } from './beam.ts';
export { pressRange, type Rest, rest, SUPPORT_SHARE, setupOf } from './bench-setup.ts';
export { benchDeflection, frequency, tableDeflection, tableLoads } from './bench-workings.ts';
export { bendAlong, bendQuestions, bendTable } from './bends.ts';
export {
  type BoardAnswer,
  boardAnswers,
  boardSkis,
  bySize,
  type Place,
  putSki,
  sideBySide,
} from './board.ts';
export { type BootOfPair, bootOf } from './boot.ts';
export { chosenTurn, comparedOf, springsOf, TAKEN_AS, turningOf } from './compared.ts';
export { leftOut } from './contenders.ts';
export { type Compared, differences, type Known, plainDecimals } from './differences.ts';
export { agoShort, agoText, type Care, dueText } from './due.ts';
export {
  category,
  chooseCategory,
  chooseEdition,
  chooseLowerLevel,
  easesLowerLevel,
  edition,
  isOwn,
  knownEditions,
  lowerLevel,
} from './edition.ts';
export { foundText, limitedText, limitText, sourcesText } from './found-text.ts';
export { faultOf, grooveOf, grooves, unbendable } from './grooves.ts';
export { groundOf, programmeOf, type RhythmAnswer } from './jobs/run-plan.ts';
export {
  type Explained,
  explainedAt,
  gripJudged,
  hardestRow,
  leastGrip,
  onEdge,
  turnRadiusOf,
  weakestRow,
} from './moment.ts';
export { bodyPath, edgeOf, edgePath, endPaths, halfOutline, overhang, type Placing } from './outline.ts';
export { formOf } from './pair-form.ts';
export { arcsAndTraverses } from './pair-path.ts';
export { type Pressed, pressedShape } from './pressed.ts';
export { findQuickLine, quickLineOf } from './quick-lines.ts';
export { carvingOf, tableOf } from './radius-tables.ts';
export { chosenRanking, enteredNow, ranking, useRankings } from './rankings.ts';
export { checkOf } from './rule-check.ts';
export { ghostPair, leadPair, programmePlan } from './run-question.ts';
export { type Identified, type LargeBendAnswer, type Modes, type TableCurve, useWork } from './runner.ts';
export {
  askAgain,
  duration,
  followRuns,
  ground,
  leadRhythm,
  leadRun,
  type PairRun,
  runs,
  turnSource,
} from './runs.ts';
export { courseConditions, type Scope, scope, type TurnModel, turnModel } from './set-question.ts';
export { radiusOf, sidecutOf } from './sidecut.ts';
export { allRows, day } from './squad.ts';
export type { SquadRow } from './squad-rows.ts';
export { type TableShown, tableShown } from './tables.ts';
export { today } from './today.ts';
export { byLatest, tuneText } from './tune-text.ts';
export { rigidOf, turnOf } from './turn.ts';
