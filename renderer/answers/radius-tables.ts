/**
 * Radius tables, made in the worker and kept by content: the same ski on the same snow is never solved twice,
 * whichever view asks.
 *
 *   const { table, progress, failure } = tableOf(pair, 1e9).value;     in a component, `computed` or `effect`
 *
 * Reading `.value` where signals are tracked starts the work; a table nobody reads any more is dropped while
 * it still waits its turn, so a dragged snow hardness does not queue up work.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import { carvingSkiOf, type RadiusTable, tableKey } from '../../core/carve/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import { perPair, ski } from '../state/index.ts';
import { doWork, forgetWork, Superseded } from './runner.ts';

export interface TableState {
  readonly table: RadiusTable | null;
  /** 0–1 while it is being made, else null. */
  readonly progress: number | null;
  /** Why there is no table: what the pair lacks, what could not be solved, or that it was stopped. */
  readonly failure: string | null;
  /** The pair states no bending stiffness; the cosine rule is all there is. */
  readonly missing: boolean;
}

const WAITING: TableState = { table: null, progress: 0, failure: null, missing: false };
/** A table is begun when it has been wanted this long. */
const SETTLED_MS = 180;
const KEPT = 48;

/** The groove's view of a pair, or why it has none; remembered per pair. */
export const carvingOf = perPair(pair => carvingSkiOf(ski(pair)));

const kept = new Map<string, ReadonlySignal<TableState>>();
const lackingTable = perPair(pair => {
  const carving = carvingOf(pair);
  return signal<TableState>({
    ...WAITING,
    progress: null,
    failure: carving.ok ? null : carving.reason,
    missing: !carving.ok && carving.missing,
  });
});

const keyOfPair = perPair(() => new Map<string, string>());

/** The radius table of a pair on snow of a hardness in N/m³, with the load `fore` m ahead of the boot centre. */
export function tableOf(pair: Pair, hardness: number, fore = 0): ReadonlySignal<TableState> {
  const carving = carvingOf(pair);
  if (!carving.ok) return lackingTable(pair);
  const keys = keyOfPair(pair);
  const question = `${hardness} ${fore}`;
  let key = keys.get(question);
  if (key === undefined) {
    key = tableKey(carving.ski, hardness, { fore });
    keys.set(question, key);
  }
  let state = kept.get(key);
  if (state) kept.delete(key);
  else state = newTable(pair, key, hardness, fore);
  kept.set(key, state);
  if (kept.size > KEPT) kept.delete(kept.keys().next().value!);
  return state;
}

function newTable(pair: Pair, key: string, hardness: number, fore: number): ReadonlySignal<TableState> {
  const lane = `table ${key}`;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let underWay = false;
  let wanted = false;
  let dropped = false;
  const state = signal<TableState>(WAITING, {
    watched() {
      wanted = true;
      if (state.peek().table || underWay) return;
      clearTimeout(timer);
      timer = setTimeout(make, SETTLED_MS);
    },
    unwatched() {
      wanted = false;
      clearTimeout(timer);
      if (underWay) dropped = forgetWork(lane, 'radiusTable');
    },
  });
  async function make() {
    underWay = true;
    dropped = false;
    state.value = WAITING;
    try {
      const made = await doWork(
        lane,
        'radiusTable',
        `Radius table of ${pair.name}`,
        { pair, hardness, fore },
        share => {
          state.value = { ...WAITING, progress: share };
        },
      );
      state.value =
        'ok' in made
          ? { ...WAITING, progress: null, failure: made.reason }
          : { ...WAITING, progress: null, table: made };
    } catch (error) {
      if (error instanceof Superseded && dropped) {
        // Nobody had asked for a moment, as when one view gives way to another; it was nobody's stop button.
        state.value = WAITING;
        if (wanted) timer = setTimeout(make, SETTLED_MS);
        return;
      }
      const failure =
        error instanceof Superseded ? 'The radius table was stopped.' : (error as Error).message;
      state.value = { ...WAITING, progress: null, failure };
    } finally {
      underWay = false;
    }
  }
  return state;
}
