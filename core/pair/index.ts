export { DEFAULTS } from './defaults.ts';
export { acceptingKey } from './fields.ts';
export { pairJsonSchema } from './json-schema.ts';
export { leastWidthMm } from './least-width.ts';
export { type OddEntry, oddEntries } from './odd-entries.ts';
export { checkPair, type ReadPair, readPair, writePair } from './pair-file.ts';
export {
  CONTACT_LENGTH_MM,
  LEAST_WIDTH_STATIONS,
  PAIR_FORMAT,
  PAIR_VERSION,
  type Pair,
} from './pair-schema.ts';
export {
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
export { problemsWith, readJson } from './read-json.ts';
export {
  namesPairs,
  readSheet,
  type Sheet,
  type SheetGuess,
  type SheetPair,
  type SheetProblem,
} from './sheet.ts';
export {
  FAULT_HEADING,
  type SheetColumn,
  type SheetField,
} from './sheet-columns.ts';
export { shown } from './shown.ts';
export type { Layup, LayupLayer, Plate, SideStrip, Ski, Stiffness } from './ski.ts';
export { skiOf } from './ski-of.ts';
export type { PairStiffness } from './stiffness-schema.ts';
