import type { Pair, RackTune, TuneEntry } from '../../core/pair/index.ts';
import type { DueAfter, Project } from './project.ts';
import type { Edit } from './rack-edits.ts';

/** By id where the entry names one, since pairs of one squad may share a name. */
export const belongsTo = (entry: TuneEntry, pair: Pick<Pair, 'id' | 'name'>): boolean =>
  entry.pairId !== undefined
    ? entry.pairId === pair.id
    : entry.pairName?.trim().toLowerCase() === pair.name.trim().toLowerCase();

/** A pair's entries, the latest day first; of one day, the last added first. */
export function tunesOf(log: readonly RackTune[], pair: Pick<Pair, 'id' | 'name'>): TuneEntry[] {
  return log
    .flatMap(tune => (tune.ok && belongsTo(tune.entry, pair) ? [tune.entry] : []))
    .reverse()
    .sort((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
}

/**
 * Adds an entry for a pair of the rack. A pair that has no id is given `id`, so that the entry stays with
 * it when it is renamed.
 */
export const addTune =
  (
    entryId: string,
    done: Pick<TuneEntry, 'date' | 'sideAngleDeg' | 'baseBevelDeg' | 'wax' | 'structure' | 'note'>,
    id: string,
  ): Edit =>
  project => {
    const rack = project.rack.map(entry =>
      entry.id === entryId && entry.pair.id === undefined ? { ...entry, pair: { ...entry.pair, id } } : entry,
    );
    const pair = rack.find(entry => entry.id === entryId)?.pair;
    if (!pair) return project;
    const entry = { pairName: pair.name, pairId: pair.id, ...done } as TuneEntry;
    return { ...project, rack, tuneLog: [...project.tuneLog, { ok: true, entry }] };
  };

export const removeTune =
  (removed: TuneEntry): Edit =>
  project => ({
    ...project,
    tuneLog: project.tuneLog.filter(tune => !(tune.ok && tune.entry === removed)),
  });

export const setDueAfter =
  (change: Partial<DueAfter>): Edit =>
  project => ({ ...project, dueAfter: { ...project.dueAfter, ...change } });

/**
 * What of the log goes into the open rack file: what came from it and entries of its pairs. With no rack
 * file open, the whole log.
 */
export function tuneLogInFile({ rack, rackFile, tuneLog }: Project): readonly RackTune[] {
  if (!rackFile) return tuneLog;
  const fromFile = new Set(rackFile.rack.tuneLog);
  const inside = rack.filter(entry => entry.inRackFile);
  const ids = new Set(inside.map(({ pair }) => pair.id).filter(id => id !== undefined));
  const names = new Set(inside.map(({ pair }) => pair.name.trim().toLowerCase()));
  return tuneLog.filter(
    tune =>
      fromFile.has(tune) ||
      (tune.ok &&
        (tune.entry.pairId !== undefined
          ? ids.has(tune.entry.pairId)
          : names.has(tune.entry.pairName?.trim().toLowerCase() ?? ''))),
  );
}
