import { LRUCache } from 'lru-cache';
import type { RadiusTable } from '../../core/carve/index.ts';
import type { ChosenPair } from '../state/index.ts';
import { type TableState, tableOf } from './radius-tables.ts';
import { askedFore, askedHardness } from './request.ts';

export interface TableShown extends TableState {
  /** The table belongs to other conditions or an earlier state of the pair; a newer one is on its way. */
  readonly stale: boolean;
}

/** A table of a moment ago for more pairs than can be chosen is not looked at again. */
const last = new LRUCache<string, RadiusTable>({ max: 8 });

/** The pair's radius table on the present snow; the last one until it is made. */
export function tableShown({ id, pair }: ChosenPair): TableShown {
  const state = tableOf(pair, askedHardness.value, askedFore.value).value;
  if (state.table) last.set(id, state.table);
  const before = state.table || state.missing ? null : (last.get(id) ?? null);
  return { ...state, table: state.table ?? before, stale: before !== null };
}
