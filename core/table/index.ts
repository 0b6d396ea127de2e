/** Delimited text in and out: encodings, separators, quotes, decimal commas, headings with units, and the line of every row. */
export { type DecodedBytes, decodeText, type Encoding } from './decode-text.ts';
export { knownUnit, splitUnit } from './heading.ts';
export { type CsvNumber, readCsvNumber } from './number.ts';
export { asCsvFile, type CsvRow, type CsvRows, readCsvRows, type Separator, writeCsvRows } from './rows.ts';
export { fromTwoColumns } from './two-columns.ts';
