import { FieldError, type FieldFault } from '../fault/index.ts';
import { type Field, rowOf } from './said.ts';
import { saidOf } from './si.ts';

/** A hair's breadth of slack: what is accepted is said in one unit and computed in another. */
const SLACK = 1e-9;

/** The first of some conditions, given in SI by their SI names, that is out of the table's range; null where none is. */
export function faultIn(given: object, fields: readonly Field[]): FieldFault | null {
  for (const field of fields) {
    const { si, least, most, whole, measure } = rowOf(field);
    const value = (given as Readonly<Record<string, number | undefined>>)[si];
    if (value === undefined) continue;
    const said = saidOf(field, value);
    const slack = SLACK * Math.max(Math.abs(least), Math.abs(most));
    if (said >= least - slack && said <= most + slack && (!whole || Number.isInteger(said))) continue;
    return {
      field: si,
      found: { quantity: measure, value: said },
      accepted: { from: least, to: most, quantity: measure, ...(whole && { whole }) },
    };
  }
  return null;
}

/** @throws FieldError for the first of the conditions, given in SI, that is out of the table's range */
export function acceptConditions(given: object, fields: readonly Field[]): void {
  const fault = faultIn(given, fields);
  if (fault !== null) throw new FieldError(fault);
}
