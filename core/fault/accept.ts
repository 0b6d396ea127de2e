import type { MeasureName } from '../units/index.ts';
import { type AcceptedRange, FieldError, type FieldFault } from './field-error.ts';

/** Whether a number is one of those a range accepts; infinity only where it is an end itself, NaN is none. */
export function isAccepted(value: number, { from, to, above, below, whole = false }: AcceptedRange): boolean {
  return (
    (Number.isFinite(value) || value === to) &&
    (from === undefined || value >= from) &&
    (to === undefined || value <= to) &&
    (above === undefined || value > above) &&
    (below === undefined || value < below) &&
    (!whole || Number.isInteger(value))
  );
}

/** @throws FieldError unless the range accepts the value */
export function accept(field: string, value: number, range: AcceptedRange): void {
  if (isAccepted(value, range)) return;
  throw new FieldError({ field, found: numberFound(value, range), accepted: range });
}

/** Longest text told of a field, letters. */
const LONGEST_TOLD = 60;

/** A text found, in quotes, cut where it is longer than a person reads; undefined where there is none. */
export function textFound(text: string): string | undefined {
  if (text === '') return undefined;
  return JSON.stringify(text.length > LONGEST_TOLD ? `${text.slice(0, LONGEST_TOLD - 1)}…` : text);
}

/** The fault of a text of more letters than a reader takes; none where it takes it. */
export const tooLong = (text: string, most: number): FieldFault[] =>
  text.length > most
    ? [
        {
          field: 'file',
          found: { key: 'found.characters', values: { count: text.length } },
          accepted: { key: 'accepted.textUpTo', values: { most } },
        },
      ]
    : [];

/** A number found where a range is accepted, in the same unit. */
export function numberFound(value: number, { unit, quantity }: { unit?: string; quantity?: MeasureName }) {
  if (quantity !== undefined) return { quantity, value };
  return unit === undefined ? value : `${value} ${unit}`;
}
