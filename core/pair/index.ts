export { pairJsonSchema } from './json-schema.ts';
export { checkPair, type ReadPair, readPair, writePair } from './pair-file.ts';
export { PAIR_FORMAT, PAIR_VERSION, type Pair } from './pair-schema.ts';
export type { Problem } from './problem.ts';
export {
  RACK_FORMAT,
  RACK_VERSION,
  type Rack,
  type RackPair,
  type RackTune,
  type ReadRack,
  rackOf,
  readRack,
  type TuneEntry,
  type Unread,
  writeRack,
} from './rack-file.ts';
export type { Layup, LayupLayer, Ski, Stiffness } from './ski.ts';
export { DEFAULTS, skiOf } from './ski-of.ts';
export type { PairStiffness } from './stiffness-schema.ts';
