/**
 * Everything derived from the project, once. A view asks here and shows what it is told; no view asks another.
 *
 *   sidecutOf(pair), beamOf(pair), tableOf(pair, hardness)    what follows from a pair, remembered for it
 *   grooves, runs, setRuns                                    signals that follow the project while they are read
 *   answer(job, { label, question })                          a signal { value, error, running, progress } of a job
 *
 * Heavy work is a job in `jobs/`, run in a worker: the latest question wins, progress and a stop button show in the
 * foot. When no worker can be had every answer says so in its `error`, and `threadFailure` for the whole page;
 * `retryAll` asks them all once more.
 */

export { retryAll, threadFailure } from './answer.ts';
export { type Balance, balanceIn } from './balance.ts';
export { type Bendable, beamOf, bendable, flatTableOf, unitBench } from './beam.ts';
export { MOST_LOAD_N, pressRange, type Rest, rest, SUPPORT_SHARE, setupOf } from './bench-setup.ts';
export { benchDeflection, frequency, tableDeflection, tableLoads } from './bench-workings.ts';
export { bendAlong, hillBends } from './bends.ts';
export {
  type BoardAnswer,
  boardAnswers,
  boardSkis,
  bySize,
  type Place,
  putSki,
  sideBySide,
} from './board.ts';
export { boardBends } from './board-bends.ts';
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
export { foundText, limitedText, limitText, sourcesText, statusText, verdictText } from './found-text.ts';
export { faultOf, grooveOf, grooves, unbendable } from './grooves.ts';
export { identified, readOf, uncertaintyMm } from './identified.ts';
export type { Identified, LargeBendAnswer, Modes, TableCurve } from './jobs/flex-jobs.ts';
export { groundOf, programmeOf, type RhythmAnswer } from './jobs/run-plan.ts';
export type { QuickestAnswer, QuickestPair } from './jobs/set-jobs.ts';
export { largeBend } from './large-bend.ts';
export { tableCurves } from './load-curves.ts';
export { modesOf } from './modes.ts';
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
export { type Pressed, pressedShape } from './pressed.ts';
export { carvingOf, tableOf } from './radius-tables.ts';
export {
  askedLoad,
  LEAST_EDGE,
  LEAST_LOAD,
  MOST_EDGE,
  MOST_LOAD,
  request as asked,
} from './request.ts';
export { checkOf } from './rule-check.ts';
export { ghostPair, leadPair, programmePlan } from './run-question.ts';
export {
  askAgain,
  duration,
  ground,
  leadRhythm,
  leadRun,
  type PairRun,
  runs,
  turnSource,
} from './runs.ts';
export { type Scope, scope, scopeOwner, type TurnModel, turnModel } from './set-question.ts';
export {
  enteredNow,
  estimated,
  firstTimes,
  retrySetRuns,
  setRunOf,
  setRuns,
} from './set-runs.ts';
export { radiusOf, sidecutOf } from './sidecut.ts';
export { allRows, day } from './squad.ts';
export type { SquadRow } from './squad-rows.ts';
export { type TableShown, tableShown } from './tables.ts';
export { today } from './today.ts';
export { byLatest, tuneText } from './tune-text.ts';
export { rigidOf, turnOf } from './turn.ts';
export { changeText, inputName } from './worth-words.ts';
