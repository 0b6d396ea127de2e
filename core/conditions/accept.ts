import { sizeOf } from '../units/index.ts';
import { type Field, rowOf } from './said.ts';
import { saidOf, unitSaid } from './si.ts';

/** A hair's breadth of slack: what is accepted is said in one unit and computed in another. */
const SLACK = 1e-9;

/** What is wrong with conditions given in SI, by the table's ranges; null where nothing is. */
export function whatIsOut(given: object, fields: readonly Field[]): string | null {
  for (const field of fields) {
    const { si, least, most, whole } = rowOf(field);
    const value = (given as Readonly<Record<string, number | undefined>>)[si];
    if (value === undefined) continue;
    const said = saidOf(field, value);
    const slack = SLACK * Math.max(Math.abs(least), Math.abs(most));
    if (said >= least - slack && said <= most + slack && (!whole || Number.isInteger(said))) continue;
    const unit = unitSaid(field) && ` ${unitSaid(field)}`;
    return `${si}: ${said}${unit} found; ${whole ? 'a whole number from ' : ''}${least} to ${most}${unit} is accepted`;
  }
  return null;
}

/** @throws RangeError naming the condition by its SI name, the value found and what is accepted, as they are said */
export function accept(given: object, fields: readonly Field[]): void {
  const fault = whatIsOut(given, fields);
  if (fault !== null) throw new RangeError(fault);
}

/**
 * Checks a number that is no condition of the table, given in SI, against a range in a unit.
 *
 * @throws RangeError naming the field, the value found and what is accepted, in that unit
 */
export function acceptWithin(field: string, value: number, unit: string, least: number, most: number): void {
  const said = Number((value / sizeOf(unit)).toPrecision(12));
  if (said >= least && said <= most) return;
  throw new RangeError(`${field}: ${said} ${unit} found; ${least} to ${most} ${unit} is accepted`);
}
