import type { PlainKey } from '../language/index.ts';
import type { SourceStatus, Working, WorkingInput } from './working.ts';

/** What a working holds beside its name and formula. */
export interface WorkingRest {
  readonly inputs: readonly WorkingInput[];
  readonly value: number;
  readonly unit: string;
  readonly note?: Working['note'];
  readonly source: Working['source'];
  readonly status?: SourceStatus;
}

/** A working from its key, title (by key), symbol, formula in the names of its inputs, and the rest; derived unless said. */
export function workingOf(
  [key, title, symbol, formula]: readonly [key: string, title: PlainKey, symbol: string, formula: string],
  { inputs, value, unit, note, source, status = 'derived' }: WorkingRest,
): Working {
  const working = {
    key,
    title: { key: title },
    symbol,
    formula,
    inputs,
    result: { value, unit },
    source,
    status,
  };
  return note === undefined ? working : { ...working, note };
}
