import type { Sentence } from '../../core/language/index.ts';
import {
  DRAFT_VERSION,
  draftedEntry,
  draftedRackFile,
  draftedTuneLog,
  projectFrom,
  projectOfDraft,
} from './draft.ts';
import type { Project } from './project.ts';
import { settingsNotTaken } from './settings-not-taken.ts';
import { type Unreadable, unreadableDraft, unreadableRecord } from './unreadable.ts';

/**
 * The work in progress in parts, each under a key of its own, so that an edit writes what it changed and no
 * more: `pair/ID` for each pair, `order` for their ids, and one for each of what is large or changes seldom.
 */
export type DraftRecords = Readonly<Record<string, string>>;

/** What to write: null takes a record away. */
export type DraftChanges = Readonly<Record<string, string | null>>;

const PAIR = 'pair/';
/** What earlier drafts called the record of what could not be read. */
const EARLIER_UNREADABLE = 'setAside';
/** The whole draft as one text, as the first versions kept it. */
const WHOLE_DRAFT = 'whole';

/**
 * Every change from one project to another; from nothing, every record there is.
 *
 * @param stale keys of records that belong to neither
 */
export function draftChanges(
  before: Project | null,
  now: Project,
  stale: readonly string[] = [],
): DraftChanges {
  const changes: Record<string, string | null> = Object.fromEntries(stale.map(key => [key, null]));
  const pairs = new Map(before?.rack.map(entry => [entry.id, entry]));
  for (const entry of now.rack) {
    if (pairs.get(entry.id) !== entry) changes[PAIR + entry.id] = JSON.stringify(draftedEntry(entry));
    pairs.delete(entry.id);
  }
  for (const id of pairs.keys()) changes[PAIR + id] = null;
  const { rack, rackFile, tuneLog, unreadable, ...rest } = now;
  const sameOrder =
    before?.rack.length === rack.length && rack.every(({ id }, at) => before.rack[at]!.id === id);
  if (!sameOrder) changes.order = JSON.stringify(rack.map(({ id }) => id));
  if (before?.rackFile !== rackFile) changes.rackFile = JSON.stringify(draftedRackFile(rackFile));
  if (before?.tuneLog !== tuneLog) changes.tuneLog = JSON.stringify(draftedTuneLog(tuneLog));
  if (before?.unreadable !== unreadable) changes.unreadable = JSON.stringify(unreadable);
  const others = Object.keys(rest) as (keyof typeof rest)[];
  if (others.some(key => before?.[key] !== rest[key])) {
    changes.rest = JSON.stringify({ version: DRAFT_VERSION, ...rest });
  }
  return changes;
}

export interface ReadDraft {
  readonly project: Project | null;
  /** What there is of a draft that gives no project, word for word. */
  readonly unreadable: readonly Unreadable[];
  /** The records hold all of the project and nothing else, so that only what changes has to be written. */
  readonly whole: boolean;
  /** Settings that fail their check and are as usual again, by name. */
  readonly notTaken: readonly Sentence[];
}

/** The project of a draft's records. What of it cannot be read is among what is set aside, word for word. */
export function projectFromRecords(records: DraftRecords | null): ReadDraft {
  if (records === null) return { project: null, unreadable: [], whole: false, notTaken: [] };
  const unreadable: Unreadable[] = [];
  const read = (key: string): unknown => {
    const text = records[key];
    if (text === undefined) return undefined;
    try {
      return JSON.parse(text);
    } catch {
      unreadable.push(unreadableRecord(key, text));
      return undefined;
    }
  };
  const whole = records[WHOLE_DRAFT];
  if (whole !== undefined && records.rest === undefined) {
    const project = projectFrom(whole);
    const notTaken = project ? settingsNotTaken(whole, project) : [];
    return { project, unreadable: project ? [] : unreadableDraft(whole), whole: false, notTaken };
  }
  const rest = read('rest');
  const order = read('order');
  const ordered = Array.isArray(order) ? order.map(id => `${PAIR}${id}`) : [];
  // A pair that the order does not know is a pair all the same.
  const keys = new Set([...ordered, ...Object.keys(records).filter(key => key.startsWith(PAIR))]);
  const draft = {
    // Without its settings a rack still comes back.
    ...(typeof rest === 'object' && rest !== null ? rest : { version: DRAFT_VERSION }),
    rack: [...keys].map(read).filter(entry => entry !== undefined),
    rackFile: read('rackFile'),
    tuneLog: read('tuneLog'),
    unreadable: read(records.unreadable === undefined ? EARLIER_UNREADABLE : 'unreadable'),
  };
  const project = projectOfDraft(draft);
  if (!project)
    return { project, unreadable: unreadableDraft(JSON.stringify(draft)), whole: false, notTaken: [] };
  const notTaken = settingsNotTaken(records.rest ?? null, project);
  const pairs = Object.keys(records).filter(key => key.startsWith(PAIR));
  const parts = pairs.length + ['order', 'rest', 'rackFile', 'tuneLog', 'unreadable'].length;
  return {
    project:
      unreadable.length === 0 ? project : { ...project, unreadable: [...project.unreadable, ...unreadable] },
    unreadable: [],
    notTaken,
    whole:
      unreadable.length === 0 &&
      notTaken.length === 0 &&
      project.rack.length === pairs.length &&
      Object.keys(records).length === parts,
  };
}
