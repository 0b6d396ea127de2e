export { type CoursePair, chooseEdge, type EdgeChoice, edgeForRadius, type GateMode } from './edge-choice.ts';
export {
  type CourseConditions,
  courseConditionsOf,
  fillCourseConditions,
  USUAL_COURSE,
} from './gate-conditions.ts';
export { type GateReading, type GateReport, gateReport } from './gate-report.ts';
export { type Gate, type GateList, type GateProblem, namesGates, readGates } from './gates.ts';
export { gateTurns, type Line, type LineOptions, lineThroughGates } from './line.ts';
export { type NoQuickLine, type QuickLine, type QuickLineQuestion, quickLine } from './quick-line.ts';
export { type Flip, type RankedPair, type Ranking, rankPairs } from './ranking.ts';
export { fitRhythmicSet, rhythmicSet, type SetFit, setRadius, setTurnAngle } from './rhythmic-set.ts';
export { setDiscipline } from './set-discipline.ts';
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
