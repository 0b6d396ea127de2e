import { computed, type ReadonlySignal } from '@preact/signals';
import { type Pair, type Ski, skiOf } from '../../core/pair/index.ts';
import { PAIR_MARKS, type PairMark } from './letters.ts';
import type { RackEntry } from './project.ts';
import { project } from './store.ts';
import { tuneLogInFile } from './tune-log.ts';

/**
 * Remembers what is derived from a pair. A pair never changes (an edit makes a new one), so its object is
 * the key, and what belongs to pairs no longer in use is dropped with them.
 */
export function perPair<T>(derive: (pair: Pair) => T): (pair: Pair) => T {
  const known = new WeakMap<Pair, T>();
  return pair => {
    if (!known.has(pair)) known.set(pair, derive(pair));
    return known.get(pair)!;
  };
}

/** SI values with defaults filled in. */
export const ski: (pair: Pair) => Ski = perPair(skiOf);

/** A chosen pair as the views see it. */
export interface ChosenPair {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly ski: Ski;
  readonly mark: PairMark;
  readonly active: boolean;
  /** Why the pair cannot be edited; absent when it can. */
  readonly readOnly?: string;
}

/** Slices that keep their identity while a condition is dragged, so that nothing about the pairs is redrawn. */
const rack = computed(() => project.value.rack);
const chosen = computed(() => project.value.chosen);
const activeId = computed(() => project.value.activeId);

/** Chosen pairs in the order of their letters. */
export const chosenPairs: ReadonlySignal<readonly ChosenPair[]> = computed(() => {
  const byId = new Map(rack.value.map(entry => [entry.id, entry]));
  return chosen.value.flatMap((id, place) => {
    const entry = id === null ? undefined : byId.get(id);
    if (!entry) return [];
    return [
      {
        id: entry.id,
        name: entry.pair.name,
        pair: entry.pair,
        ski: ski(entry.pair),
        mark: PAIR_MARKS[place]!,
        active: entry.id === activeId.value,
        readOnly: entry.readOnly,
      },
    ];
  });
});

/** The pair that handles and large readings belong to; null when none is chosen. */
export const activePair: ReadonlySignal<ChosenPair | null> = computed(
  () => chosenPairs.value.find(each => each.active) ?? chosenPairs.value[0] ?? null,
);

export const isUnsaved = (entry: RackEntry): boolean => entry.saved !== entry.pair;

/** Entries with changes that are in no file. Demo pairs as they came do not count. */
export const unsavedEntries: ReadonlySignal<readonly RackEntry[]> = computed(() =>
  rack.value.filter(isUnsaved),
);

/** Whether the open rack file differs from the rack: a pair or a tune entry in it was changed, added or removed. */
export const rackFileUnsaved: ReadonlySignal<boolean> = computed(() => {
  const { rackFile } = project.value;
  if (!rackFile || rackFile.readOnly) return false;
  const inside = rack.value.filter(entry => entry.inRackFile);
  const log = tuneLogInFile(project.value);
  const savedLog = rackFile.rack.tuneLog;
  return (
    inside.some(isUnsaved) ||
    inside.length !== rackFile.savedIds.length ||
    log.length !== savedLog.length ||
    log.some((tune, at) => tune !== savedLog[at]) ||
    inside.some((entry, at) => entry.id !== rackFile.savedIds[at])
  );
});

/** Whether tune entries are in no file, because no rack file is open to hold them. Demo entries do not count. */
export const tuneLogUnsaved: ReadonlySignal<boolean> = computed(() => {
  const { rackFile, tuneLog } = project.value;
  return rackFile === null && tuneLog.some(tune => !tune.ok || tune.entry.demo !== true);
});
