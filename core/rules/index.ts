export {
  type CheckedPair,
  type CheckItem,
  type CheckOptions,
  checkPair,
  type PairCheck,
} from './check-pair.ts';
export { type ControlFinding, controlFinding } from './control-finding.ts';
export {
  controlOf,
  controlReadings,
  controlReadingsOf,
  missingReadings,
  type StatedControl,
  type StatedReading,
  statedReading,
  statedStations,
} from './control-of.ts';
export {
  type ControlReading,
  type ControlResult,
  type ControlStations,
  controlRadius,
  controlStations,
  controlVerdict,
  rulebookRadius,
} from './control-radius.ts';
export {
  type Category,
  categories,
  type Discipline,
  disciplines,
  type Edition,
  editionSchema,
  type Limit,
  type LimitedQuantity,
} from './edition.ts';
export { editionText, limitedQuantity } from './edition-words.ts';
export { editions, season2024 } from './editions.ts';
export { type LimitVerdict, limitVerdict } from './limit-verdict.ts';
export { readEdition } from './read-edition.ts';
export { rulebookUncertainty } from './rulebook-uncertainty.ts';
export { catalogueRadiusWorking, controlRadiusWorking, threeReadingsWorking } from './working.ts';
