export {
  decimal,
  decimalsFor,
  type FormatOptions,
  type FormattedQuantity,
  formatQuantity,
} from './format.ts';
export { type MeasureName, measures, type Shown, type System, shownAs } from './measures.ts';
export { type Parsed, parseQuantity } from './parse.ts';
