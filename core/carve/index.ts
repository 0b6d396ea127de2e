export type { CarvingSkiAnswer } from './carving-ski.ts';
export { carvingSkiOf } from './carving-ski.ts';
export type { CarveConditions, CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
export type { GrooveSolver, GrooveSolverOptions, GrooveStart } from './groove-solver.ts';
export { grooveSolver } from './groove-solver.ts';
export type { Hold, LostFirst } from './hold.ts';
export { holdAlong } from './hold.ts';
export { NAMED_SNOWS, type SnowName, usualWallStrength, wallStrengthOf } from './named-snow.ts';
export type { Neighbour } from './neighbouring-start.ts';
export { type PressureCentre, pressureArm, pressureCentre } from './pressure-centre.ts';
export type { TableLookup } from './radius-lookup.ts';
export { tableLookup, tableRadius, tableTwistTail, tableTwistTip } from './radius-lookup.ts';
export type { FinerCell, TablePoint } from './radius-refinement.ts';
export type { RadiusTable, RadiusTableOptions } from './radius-table.ts';
export { buildRadiusTable } from './radius-table.ts';
export type { RigidCarve, RigidSki } from './rigid-snow.ts';
export {
  biteAngle,
  carveRigid,
  cosineRadius,
  edgeHeight,
  edgeLateral,
  midSkiTravel,
  pressedHeight,
} from './rigid-snow.ts';
export type { SnowLaw } from './snow-law.ts';
export { REBOUND } from './snow-law.ts';
export type { TrackFit, TrackPart } from './track-radius.ts';
export type { EvenPress, TurnSurface } from './turn-surface.ts';
export { cosineTurnSurface, tableTurnSurface } from './turn-surface.ts';
export { sectionDepth, wedgeDepth, wedgeSnow } from './wedge-snow.ts';
export {
  biteAngleWorking,
  cornerAngleWorking,
  cosineRadiusWorking,
  holdWorking,
  lineLoadWorking,
  partRadiusWorking,
  penetrationWorking,
  travelWorking,
  turnRadiusWorking,
  twistWorking,
  wedgeDepthWorking,
} from './working.ts';
