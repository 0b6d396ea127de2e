import type { Sentence, Value } from '../language/index.ts';
import type { MeasureName } from '../units/index.ts';

/** Numbers that are accepted; `from` and `to` are among them, `above` and `below` are not. */
export interface AcceptedRange {
  readonly from?: number;
  readonly to?: number;
  readonly above?: number;
  readonly below?: number;
  readonly whole?: boolean;
  /** The unit the numbers are in, as files and options have it, for example `mm`. */
  readonly unit?: string;
  /** The measure they are of, in the unit it is held in; shown in the reader's own units. */
  readonly quantity?: MeasureName;
}

/** What a field takes: numbers of a range, one of several words, or what a sentence says. */
export type Accepted = AcceptedRange | { readonly oneOf: readonly (string | number)[] } | Sentence;

/** Where a text holds the field, counted from 1. */
export interface Where {
  readonly line?: number;
  readonly row?: number;
  readonly column?: string;
}

/** A field that cannot be used: enough to mend it without looking anything up. */
export interface FieldFault {
  /** Path of the field, for example `bending.stations[2].newtonM2`; `file` for a text as a whole. */
  readonly field: string;
  /** The value found; undefined where the field is absent. */
  readonly found: Value | undefined;
  readonly accepted: Accepted;
  readonly where?: Where;
  /** What is wrong with it, where more can be said than that it is not accepted. */
  readonly because?: Sentence;
}

/**
 * The one error for a field that cannot be used. `core/language` puts it into words; its `message` is for a stack
 * trace, and no code reads it.
 */
export class FieldError extends RangeError implements FieldFault {
  override readonly name = 'FieldError';
  readonly field: string;
  readonly found: Value | undefined;
  readonly accepted: Accepted;
  readonly where?: Where;
  readonly because?: Sentence;

  constructor(
    { field, found, accepted, where, because }: FieldFault,
    /** Further fields of the same text that are at fault. */
    readonly others: readonly FieldFault[] = [],
  ) {
    super(
      `${where ? `${inShort(where)} ` : ''}${field}: ${inShort(found)}; accepted: ${inShort(because ?? accepted)}`,
    );
    this.field = field;
    this.found = found;
    this.accepted = accepted;
    if (where) this.where = where;
    if (because) this.because = because;
  }
}

/** Throws the first of these faults with the others behind it; nothing where there is none. */
export function throwFaults([first, ...others]: readonly FieldFault[]): void {
  if (first) throw new FieldError(first, others);
}

/**
 * The same fault as plain data, which crosses to another thread whole where an error would not; by the path of a
 * wider whole or where its text holds it, if that is given.
 */
export function plainFault(
  fault: FieldFault,
  at: Partial<Pick<FieldFault, 'field' | 'where'>> = {},
): FieldFault {
  const { field, found, accepted, where, because } = { ...fault, ...at };
  return { field, found, accepted, ...(where && { where }), ...(because && { because }) };
}

const inShort = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? 'nothing');
