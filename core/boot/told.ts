import type { SourceStatus, Working, WorkingInput } from '../working/index.ts';

/** One input of a working. */
export function input(
  name: string,
  symbol: string,
  value: number,
  unit: string,
  meaning: string,
  from?: string,
): WorkingInput {
  return from ? { name, symbol, meaning, value, unit, from } : { name, symbol, meaning, value, unit };
}

/** What a working holds beside its name and formula. */
export interface Told {
  readonly inputs: readonly WorkingInput[];
  readonly value: number;
  readonly unit: string;
  readonly note?: string;
  readonly source: string;
  readonly status?: SourceStatus;
}

/** A working from its key, title, symbol, formula in the names of its inputs, and the rest; derived unless said. */
export function told(
  [key, title, symbol, formula]: readonly [string, string, string, string],
  { inputs, value, unit, note, source, status = 'derived' }: Told,
): Working {
  const working = { key, title, symbol, formula, inputs, result: { value, unit }, source, status };
  return note === undefined ? working : { ...working, note };
}
