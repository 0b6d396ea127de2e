export { gateTurns } from './gate-turns.ts';
export { type Gate, type GateList, type GateProblem, namesGates, readGates } from './gates.ts';
export { fitRhythmicSet, rhythmicSet, type SetFit, setRadius, setTurnAngle } from './rhythmic-set.ts';
export { setDiscipline, USUAL_COURSE } from './set-discipline.ts';
export type { SetStatement } from './set-statement.ts';
export {
  checkSetting,
  type SettingCheck,
  type SettingItem,
  type SettingOptions,
} from './setting-rules.ts';
export { unreadComments } from './unread-rows.ts';
export { neededEdgeWorking, setRadiusWorking } from './working.ts';
export { writeGates } from './write-gates.ts';
