export {
  BENDING_HALF,
  bendingMatrix,
  gaussValues,
  hermite,
  hermiteCurvature,
  meshThrough,
  nodeAt,
  solveSupported,
} from './beam.ts';
export { type BenchResult, type BenchSetup, benchPress } from './bench-press.ts';
export { type BenchTable, namesBenchReadings, readBenchTable } from './bench-table.ts';
export {
  type BendAnswer,
  type BendQuestion,
  bendTest,
  DEFAULT_LOADS,
  type Needs,
  type VibrationAnswer,
  vibrationTest,
} from './bend-test.ts';
export { dampingRatio } from './damping.ts';
export { DOWN_WITHIN, type FlatTable, flatTable, type TableSetup, type TableState } from './flat-table.ts';
export {
  type BenchReading,
  DEFAULT_UNCERTAINTY,
  type IdentifiedProfile,
  type IdentifiedStation,
  type IdentifyOptions,
  identify,
} from './identify.ts';
export { type LargeBend, largeBend, largeCantilever } from './large-bend.ts';
export { type LayupSection, layupSection, layupSections } from './layup.ts';
export { localWidth } from './local-width.ts';
export { massPerLength } from './mass.ts';
export { endPieces, overhang } from './overhang.ts';
export type { Profile } from './profile.ts';
export {
  bendingCompliance,
  type ClampedSki,
  cantileverCompliance,
  type Springs,
  springs,
} from './springs.ts';
export { RUN_IN, type StiffSpan, withSpan } from './stiff-span.ts';
export {
  bareBendingOf,
  bareTorsionOf,
  bendingOf,
  bootedBendingOf,
  type ProfileOptions,
  profileOf,
  torsionOf,
} from './stiffness.ts';
export { type TwistBench, torsionalSpring, twistBench } from './twist-bench.ts';
export {
  type Mode,
  massMatrix,
  modeName,
  type VibratingSki,
  type VibrationOptions,
  vibrate,
} from './vibration.ts';
export { flexWorkings, layupWorkings } from './working.ts';
