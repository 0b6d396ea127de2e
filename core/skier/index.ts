export { type LegSpan, legOfHeight, standingLeg } from './body.ts';
export { GRAVITY, type LegRates, type LegTerms, legRates, massOverSkis, type Pace } from './leg-model.ts';
export { limitSentence, tiesTheEnds } from './limit-sentence.ts';
export { GRIP_FROM, type PresetId, SKIER_PRESETS, type SkierPreset } from './presets.ts';
export {
  BITE,
  bite,
  type OwnCurvature,
  ownCurvature,
  scrapeShare,
} from './ski-path.ts';
export {
  acceptLegSpan,
  acceptSkier,
  DRIFT_MOST,
  DRIFT_RATE,
  LEAST_PUSH,
  legSpanOf,
  MISMATCH_MOST,
  MISMATCH_RATE,
  SHELF_ALLOWANCE,
  type Skier,
  skierOf,
} from './skier.ts';
export { canBreak, type GrooveWall, wallRoom, wallUsed } from './wall.ts';
