export { type BootAnswer, type BootOnEdge, type BootQuestion, bootAnswer, edgeBelowFoot } from './answer.ts';
export {
  BINDING_CAUTION,
  type BindingLoadColumns,
  type BindingLoads,
  type BootOnSki,
  bindingLoadColumns,
  bindingLoads,
  type TurnColumns,
  type TurnReadings,
} from './binding-loads.ts';
export { type GrooveTurn, grooveLoads } from './groove-loads.ts';
export {
  bootLever,
  bootMoment,
  type EdgeBelowFoot,
  edgeAngleLost,
  freeAngulation,
  pushOf,
} from './lever.ts';
export {
  angulationWorking,
  bindingLoadWorkings,
  bootMomentWorking,
  bootWorkings,
  edgeAngleLostWorking,
  footBedWorking,
  freeAngulationWorking,
  pushWorking,
  solvedBootMomentWorking,
  solvedFreeAngulationWorking,
} from './working.ts';
