/** Delimited text in and out: separators, quotes, decimal commas, headings with units, and the line of every row. */
export { knownUnit, splitUnit } from './heading.ts';
export { type CsvNumber, readCsvNumber } from './number.ts';
export { type CsvRow, type CsvRows, readCsvRows, type Separator, writeCsvRows } from './rows.ts';
export { fromTwoColumns, TableTextError } from './two-columns.ts';
