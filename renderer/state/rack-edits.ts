import type { Pair } from '../../core/pair/index.ts';
import { MAX_CHOSEN, type Project, type RackEntry, type RackFile } from './project.ts';

/** Edits are pure: a project in, a project out. The store puts them into the history. */
export type Edit = (project: Project) => Project;

/** Adds entries at the end of the rack and chooses the first of them when nothing is chosen. */
export const addEntries =
  (entries: readonly RackEntry[]): Edit =>
  project => {
    const rack = [...project.rack, ...entries];
    const first = entries[0];
    const grown = { ...project, rack };
    return first && project.chosen.every(id => id === null) ? choose(first.id)(grown) : grown;
  };

/** A pair's new state. The entry keeps its file, so saving writes back to where it came from. */
export const replacePair =
  (id: string, pair: Pair): Edit =>
  project => ({
    ...project,
    rack: project.rack.map(entry => (entry.id === id ? { ...entry, pair } : entry)),
  });

/**
 * Changes entries one by one. What steps of the history share they share afterwards, so that a fact learnt of
 * thousands of pairs costs no more than one copy of them.
 */
function eachEntry(change: (entry: RackEntry) => RackEntry): Edit {
  const racks = new Map<Project['rack'], Project['rack']>();
  const entries = new Map<RackEntry, RackEntry>();
  const once = <T>(known: Map<T, T>, key: T, make: () => T): T => {
    const made = known.get(key) ?? make();
    known.set(key, made);
    return made;
  };
  const entry = (each: RackEntry) => once(entries, each, () => change(each));
  return project => ({
    ...project,
    rack: once(racks, project.rack, () => project.rack.map(entry)),
  });
}

/** For `amendAllSteps`: the pair as it is in its own file now. */
export const markSaved = (id: string, pair: Pair, file: { token: string; name: string }): Edit =>
  eachEntry(entry =>
    entry.id === id ? { ...entry, saved: pair, fileToken: file.token, fileName: file.name } : entry,
  );

/**
 * For `amendAllSteps`: the rack file holds these pairs now. It holds for the steps in which `before` was open; pairs
 * written count as saved in every step.
 */
export function markRackSaved(
  before: RackFile | null,
  file: RackFile,
  written: ReadonlyMap<string, Pair>,
): Edit {
  const saved = eachEntry(entry =>
    written.has(entry.id) ? { ...entry, saved: written.get(entry.id)! } : entry,
  );
  const inFile = eachEntry(entry =>
    written.has(entry.id)
      ? { ...entry, saved: written.get(entry.id)!, inRackFile: true, fileName: file.name }
      : entry,
  );
  return project =>
    project.rackFile?.token === before?.token ? { ...inFile(project), rackFile: file } : saved(project);
}

export const removeEntry = (id: string): Edit => removeEntries(entry => entry.id === id);

/** Takes pairs out of the rack, and their letters with them. */
export const removeEntries =
  (gone: (entry: RackEntry) => boolean): Edit =>
  project => {
    const rack = project.rack.filter(entry => !gone(entry));
    const left = new Set(rack.map(entry => entry.id));
    const chosen = project.chosen.map(each => (each !== null && left.has(each) ? each : null));
    const activeId =
      project.activeId !== null && left.has(project.activeId)
        ? project.activeId
        : (chosen.find(each => each !== null) ?? null);
    return { ...project, rack, chosen, activeId };
  };

/**
 * Chooses a pair: it takes the first free letter and becomes the active one. When all four letters are in
 * use the project comes back unchanged; `letterFree` tells beforehand.
 */
export const choose =
  (id: string): Edit =>
  project => {
    if (project.chosen.includes(id)) return { ...project, activeId: id };
    const place = project.chosen.indexOf(null);
    if (place < 0) return project;
    const chosen = project.chosen.map((each, at) => (at === place ? id : each));
    return { ...project, chosen, activeId: id };
  };

/** Where all four letters are in use, takes the last one back, so that what was just opened can be seen. */
export const freeLetter: Edit = project => {
  if (letterFree(project)) return project;
  return { ...project, chosen: project.chosen.map((id, at) => (at === MAX_CHOSEN - 1 ? null : id)) };
};

export const unchoose =
  (id: string): Edit =>
  project => {
    const chosen = project.chosen.map(each => (each === id ? null : each));
    const activeId =
      project.activeId === id ? (chosen.find(each => each !== null) ?? null) : project.activeId;
    return { ...project, chosen, activeId };
  };

/** Only these pairs, in this order, lettered from A. */
export const chooseOnly =
  (ids: readonly string[]): Edit =>
  project => {
    const known = ids.filter(id => project.rack.some(entry => entry.id === id)).slice(0, MAX_CHOSEN);
    const chosen = Array.from({ length: MAX_CHOSEN }, (_, at) => known[at] ?? null);
    return { ...project, chosen, activeId: known[0] ?? null };
  };

export const activate =
  (id: string): Edit =>
  project =>
    project.chosen.includes(id) ? { ...project, activeId: id } : project;

export const setConditions =
  (change: Partial<Project['conditions']>): Edit =>
  project => ({ ...project, conditions: { ...project.conditions, ...change } });

export const setView =
  (change: Partial<Project['view']>): Edit =>
  project => ({ ...project, view: { ...project.view, ...change } });

/** Whether a new pair goes into the rack file that is open. */
export const joinsRackFile = ({ rackFile }: Project): boolean => rackFile !== null && !rackFile.readOnly;

export const letterFree = (project: Project): boolean => project.chosen.includes(null);
