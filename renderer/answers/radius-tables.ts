/**
 * Radius tables, made in a worker and kept by content: the same ski on the same snow is never solved twice,
 * whichever view asks.
 *
 *   const { table, progress, failure } = tableOf(pair, 1e9).value;     in a component, `computed` or `effect`
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { LRUCache } from 'lru-cache';
import { carvingSkiOf, type RadiusTable } from '../../core/carve/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import { inWords, perPair, ski, t } from '../state/index.ts';
import { answer } from './answer.ts';

export interface TableState {
  readonly table: RadiusTable | null;
  /** 0–1 while it is being made, else null. Only who reads it is told of every step. */
  readonly progress: number | null;
  /** Why there is no table: what the pair lacks, what could not be solved, or that it was stopped. */
  readonly failure: string | null;
  /** The pair states no bending stiffness; the cosine rule is all there is. */
  readonly missing: boolean;
}

/** A table is begun when it has been wanted this long. */
const SETTLED_MS = 180;
const KEPT = 48;

/** The groove's view of a pair, or why it has none; remembered per pair. */
export const carvingOf = perPair(pair => carvingSkiOf(ski(pair)));

const lackingTable = perPair(pair => {
  const carving = carvingOf(pair);
  return signal<TableState>({
    table: null,
    progress: null,
    failure: carving.ok ? null : inWords(carving.reason),
    missing: !carving.ok && carving.missing,
  });
});

/** All of a ski that a turn radius may come from, as text; what it is called and how its edges are ground is none of it. */
const turnedBy = perPair(pair => {
  const {
    name,
    discipline,
    mass,
    sideAngle,
    baseBevel,
    standingHeight,
    bootSoleHeight,
    heightsStated,
    ...rest
  } = ski(pair);
  return JSON.stringify(rest);
});

const kept = new LRUCache<string, ReadonlySignal<TableState>>({ max: KEPT });

/** The radius table of a pair on snow of a hardness in N/m³, with the load `fore` m ahead of the boot centre. */
export function tableOf(pair: Pair, hardness: number, fore = 0): ReadonlySignal<TableState> {
  if (!carvingOf(pair).ok) return lackingTable(pair);
  const key = `${hardness} ${fore} ${turnedBy(pair)}`;
  const known = kept.get(key) ?? newTable(pair, hardness, fore);
  kept.set(key, known);
  return known;
}

function newTable(pair: Pair, hardness: number, fore: number): ReadonlySignal<TableState> {
  const question = { pair, hardness, fore };
  const made = answer('radiusTable', {
    label: t('answers.radiusTable', { name: pair.name }),
    question: () => question,
    settleMs: SETTLED_MS,
  });
  // Who turns on the table is not told anew of what leaves it as it was.
  let last: TableState | null = null;
  return computed(() => {
    const now = made.value;
    const solved = now.value !== null && !('ok' in now.value) ? now.value : null;
    const lacking = now.value !== null && 'ok' in now.value ? inWords(now.value.reason) : null;
    const failure = lacking ?? now.error ?? (now.stopped ? t('answers.radiusTableStopped') : null);
    if (last?.table === solved && last.failure === failure) return last;
    last = {
      table: solved,
      failure,
      missing: false,
      get progress() {
        return solved === null && failure === null ? (now.progress ?? 0) : null;
      },
    };
    return last;
  });
}
