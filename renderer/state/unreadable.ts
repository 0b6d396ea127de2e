import type { FieldFault } from '../../core/fault/index.ts';
import { readPair } from '../../core/pair/index.ts';
import { fileStem } from './file-stem.ts';
import type { RackEntry } from './project.ts';
import type { Edit } from './rack-edits.ts';
import { faultsInWords, inWords, t } from './words.ts';

/** A part of the last work that this version cannot take up again. It is kept, word for word, until taken off. */
export interface Unreadable {
  readonly id: string;
  /** What it is called in the list. */
  readonly name: string;
  /** Name under which it is offered as a file. */
  readonly fileName: string;
  /** What was found and what would be accepted. */
  readonly why: string;
  readonly text: string;
}

/** A pair of the draft that fails the check of today. */
export function unreadablePair(id: string, pair: unknown, problems: readonly FieldFault[]): Unreadable {
  const given = (pair as { name?: unknown } | null | undefined)?.name;
  const name = typeof given === 'string' && given.trim() ? given : t('draft.pairWithoutName');
  return {
    id,
    name,
    fileName: `${fileStem(name)}.pair.json`,
    why: faultsInWords(problems) || t('draft.noPair'),
    text: `${JSON.stringify(pair ?? null, null, 2)}\n`,
  };
}

/** A draft that cannot be read as a whole, which the next draft would otherwise be written over. */
export function unreadableDraft(text: string | null): Unreadable[] {
  if (!text?.trim()) return [];
  let version: unknown;
  try {
    version = (JSON.parse(text) as { version?: unknown } | null)?.version;
  } catch {
    version = undefined;
  }
  const why = typeof version === 'number' ? t('draft.otherVersion', { version }) : t('draft.damaged');
  return [{ id: 'draft', name: t('draft.lastWork'), fileName: 'work-in-progress.json', why, text }];
}

/** One record of a draft that is damaged; the others are read all the same. */
export function unreadableRecord(key: string, text: string): Unreadable {
  return {
    id: `draft ${key}`,
    name: t('draft.partOfLastWork'),
    fileName: 'part-of-work-in-progress.json',
    why: t('draft.damaged'),
    text,
  };
}

/** What was set aside in an earlier start, and those of its pairs that pass the check now. */
export function unreadableFrom(value: unknown): { unreadable: Unreadable[]; back: RackEntry[] } {
  const unreadable: Unreadable[] = [];
  const back: RackEntry[] = [];
  for (const each of Array.isArray(value) ? value : []) {
    const { id, name, fileName, why, text } = (each ?? {}) as Record<string, unknown>;
    if (typeof text !== 'string') continue;
    const read = readPair(text);
    const own = typeof id === 'string' ? id : `aside ${unreadable.length + back.length}`;
    if (read.ok) {
      const readOnly = read.readOnly ? { readOnly: read.notes.map(inWords).join(' ') } : {};
      back.push({ id: own, pair: read.pair, saved: null, ...readOnly });
    } else {
      unreadable.push({
        id: own,
        name: typeof name === 'string' ? name : t('draft.earlierPart'),
        fileName: typeof fileName === 'string' ? fileName : 'earlier-work.json',
        why: typeof why === 'string' ? why : '',
        text,
      });
    }
  }
  return { unreadable, back };
}

/** Ids of their own: two starts may each set a pair aside under one id. */
export function apart<T extends { readonly id: string }>(items: readonly T[]): T[] {
  const taken = new Set<string>();
  return items.map(item => {
    let { id } = item;
    for (let more = 2; taken.has(id); more++) id = `${item.id} ${more}`;
    taken.add(id);
    return id === item.id ? item : { ...item, id };
  });
}

/** Off the list for good, once undo is past. */
export const dismiss =
  (id: string): Edit =>
  now => ({ ...now, unreadable: now.unreadable.filter(each => each.id !== id) });
