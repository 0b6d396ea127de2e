export { airDensity, DRAG_AREA, type Posture } from './air.ts';
export {
  angulation,
  balancedLoad,
  GRAVITY,
  holdUnderBoot,
  leanAngle,
  leastHoldingEdge,
  levelSpeed,
  normalForce,
  outwardWeight,
  sidewaysForce,
  snowLoad,
  speedCeiling,
} from './balance.ts';
export { type CoachWords, coachWords } from './coach-words.ts';
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
export { holdAtEnds } from './hold-at-ends.ts';
export { idealLean, idealRadius } from './ideal-carving.ts';
export type { RunConditions, RunOptions, RunState, RunWatch } from './run-conditions.ts';
export { OUTER_SHARE } from './run-conditions.ts';
export { runDown } from './run-down.ts';
export { BITE_BLEND, biteFraction, MASS_HEIGHT, shelfForce } from './skid.ts';
export {
  demoProfiles,
  evenSlope,
  profileThrough,
  readProfile,
  type SlopeProfile,
  slopeAngle,
} from './slope-profile.ts';
export { type StraightRun, straightDistance, straightSpeed, terminalSpeed } from './straight-run.ts';
export {
  type EnergyColumns,
  Phase,
  type RunEnd,
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
export { cosineTurn, type TurnBasis, type TurnRadius, tableTurn, turnOf } from './turn-radius.ts';
export {
  type ChainQuestion,
  explainChain,
  idealRadiusWorking,
  speedCeilingWorking,
  terminalSpeedWorking,
} from './working.ts';
