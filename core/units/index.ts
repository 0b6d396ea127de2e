/**
 * What "165 cm" means and how 1.65 m is shown: one table of units, read by the page, by its fields and by
 * whoever reads a number that a person wrote.
 */
export { DEGREE, GPA, KMH, KPA, MM, N_PER_MM3 } from './factors.ts';
export {
  decimal,
  decimalsFor,
  type FormatOptions,
  type FormattedQuantity,
  formatQuantity,
} from './format.ts';
export { type MeasureName, measures, type Shown, type System, shownAs } from './measures.ts';
export { type Parsed, parseQuantity, readIn } from './parse.ts';
export { sizeOf, spellingsOf, unitOf } from './table.ts';
