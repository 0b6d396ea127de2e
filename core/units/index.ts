export { type FormatOptions, formatQuantity, placesFor, type ShownUnit, type System } from './format.ts';
export {
  type ParsedQuantity,
  type ParseOptions,
  parseAngle,
  parseForce,
  parseLength,
  parseMass,
  parseQuantity,
  parseSpeed,
  parseStiffness,
  type QuantityKind,
} from './parse.ts';
