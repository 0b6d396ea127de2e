/**
 * A number as people write it in a sheet: decimal point or comma, thousands set off by a space, an
 * apostrophe or the other mark, a unit behind it.
 */
export interface CsvNumber {
  readonly value: number;
  /** The unit written behind the number, lower case, or null. */
  readonly unit: string | null;
}

/** Reads a written number; null when it is not one. `1.234,5`, `1 234.5`, `12,5 mm` are all understood. */
export function readCsvNumber(text: string): CsvNumber | null {
  const found = /^([+\-\u2212]?)([\d.,'\u2019\s\u00a0\u202f]*\d[.,]?)\s*([a-z°/³²µ"″]*)\.?$/iu.exec(
    text.trim(),
  );
  if (!found) return null;
  const digits = found[2].replace(/['\u2019\s\u00a0\u202f]/gu, '');
  const plain = plainDecimal(digits);
  if (plain === null) return null;
  const value = Number(plain) * (found[1] === '' || found[1] === '+' ? 1 : -1);
  if (!Number.isFinite(value)) return null;
  return { value, unit: found[3] === '' ? null : found[3].toLowerCase() };
}

/** The later of two different marks is the decimal mark; a mark that comes twice groups thousands. */
function plainDecimal(digits: string): string | null {
  const dot = digits.lastIndexOf('.');
  const comma = digits.lastIndexOf(',');
  if (dot < 0 && comma < 0) return digits;
  const decimal = dot > comma ? '.' : ',';
  const grouping = decimal === '.' ? ',' : '.';
  const decimals = digits.split(decimal).length - 1;
  if (decimals > 1) {
    const grouped = new RegExp(`^\\d{1,3}(\\${decimal}\\d{3})+$`);
    return grouped.test(digits) ? digits.replaceAll(decimal, '') : null;
  }
  const whole = digits.slice(0, digits.lastIndexOf(decimal));
  if (whole.includes(grouping) && !new RegExp(`^\\d{1,3}(\\${grouping}\\d{3})+$`).test(whole)) return null;
  return digits.replaceAll(grouping, '').replace(decimal, '.');
}
