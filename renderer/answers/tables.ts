import type { RadiusTable } from '../../core/carve/index.ts';
import type { ChosenPair } from '../state/index.ts';
import { askedFore, askedHardness } from './asked.ts';
import { type TableState, tableOf } from './radius-tables.ts';

export interface TableShown extends TableState {
  /** The table belongs to other conditions or an earlier state of the pair; a newer one is on its way. */
  readonly stale: boolean;
}

const last = new Map<string, RadiusTable>();

/** The pair's radius table on the present snow; the last one until it is made. */
export function tableShown({ id, pair }: ChosenPair): TableShown {
  const state = tableOf(pair, askedHardness.value, askedFore.value).value;
  if (state.table) {
    last.set(id, state.table);
    return { ...state, stale: false };
  }
  if (state.missing) return { ...state, stale: false };
  return { ...state, table: last.get(id) ?? null, stale: last.has(id) };
}
