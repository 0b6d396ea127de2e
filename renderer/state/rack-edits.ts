import type { Pair } from '../../core/pair/index.ts';
import { MAX_CHOSEN, type Project, type RackEntry } from './project.ts';

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

export const markSaved =
  (id: string, pair: Pair, file: { token: string; name: string }): Edit =>
  project => ({
    ...project,
    rack: project.rack.map(entry =>
      entry.id === id ? { ...entry, saved: pair, fileToken: file.token, fileName: file.name } : entry,
    ),
  });

export const removeEntry =
  (id: string): Edit =>
  project => {
    const rack = project.rack.filter(entry => entry.id !== id);
    const chosen = project.chosen.map(each => (each === id ? null : each));
    const activeId =
      project.activeId === id ? (chosen.find(each => each !== null) ?? null) : project.activeId;
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

export const letterFree = (project: Project): boolean => project.chosen.includes(null);
