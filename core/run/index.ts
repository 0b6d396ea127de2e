export { airDensity, DRAG_AREA, type Posture } from './air.ts';
export { balancedLoad, GRAVITY, levelSpeed, speedCeiling } from './balance.ts';
export { type CoachWords, coachWords } from './coach-words.ts';
export { type DynamicMoment, dynamicMoment } from './dynamic-moment.ts';
export {
  dynamicHoldWorking,
  dynamicLoadWorking,
  explainMoment,
  type MomentQuestion,
} from './dynamic-working.ts';
export {
  type BankedProgramme,
  bankedTurns,
  drawnEdges,
  type EdgeProgramme,
  heldEdge,
  type LinkedTurns,
  linkedTurns,
  type Programme,
  readEdges,
  type TurnShape,
} from './edge-programme.ts';
export { runFailureSentence } from './failure-sentence.ts';
export { holdAtEnds } from './hold-at-ends.ts';
export { idealRadius } from './ideal-carving.ts';
export { momentWords } from './moment-words.ts';
export { type ChosenTurn, fastestHeld, leanIn, neededEdge } from './needed-edge.ts';
export type { RunConditions, RunOptions } from './run-conditions.ts';
export {
  demoProfiles,
  evenSlope,
  profileThrough,
  readProfile,
  type SlopeProfile,
  slopeAngle,
} from './slope-profile.ts';
export { type Run, type RunFailure, type RunSolution, solveRun } from './solve-run.ts';
export { type StraightRun, straightDistance, straightSpeed, terminalSpeed } from './straight-run.ts';
export { namesProfile, namesProgramme } from './table-headings.ts';
export {
  type EnergyColumns,
  FLAT_UP_TO,
  Phase,
  type RunEnd,
  SLIPPING_FROM,
  type Track,
  type TrackEvent,
  type TrackSummary,
} from './track.ts';
export {
  holdingEdge,
  holdingRadius,
  holdingSpeed,
  type TurnMoment,
  type TurnQuestion,
  turnMoment,
} from './turn-moment.ts';
export {
  type CarvedTurn,
  cosineTurn,
  type TurnBasis,
  type TurnRadius,
  tableTurn,
  turnOf,
} from './turn-radius.ts';
export {
  type ChainQuestion,
  explainChain,
  idealRadiusWorking,
  speedCeilingWorking,
  terminalSpeedWorking,
} from './working.ts';
