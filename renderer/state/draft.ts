import { checkPair, type Pair, type RackTune, rackOf, readRack, writeRack } from '../../core/pair/index.ts';
import { boardFrom } from './board-settings.ts';
import { conditionsFrom } from './condition-settings.ts';
import { courseFrom } from './course-edits.ts';
import {
  DEFAULT_DUE,
  DEFAULT_VIEW,
  type DueAfter,
  MAX_CHOSEN,
  type Project,
  QUESTIONS,
  type RackEntry,
  type RackFile,
  THEMES,
  type ViewSettings,
} from './project.ts';
import { rulesFrom } from './rules-settings.ts';
import { slopeFrom } from './slope-settings.ts';
import { apart, type Unreadable, unreadableFrom, unreadablePair } from './unreadable.ts';
import { inWords, t } from './words.ts';

export const DRAFT_VERSION = 1;
const EMPTY_RACK = rackOf('', []);

/** A pair as it stands in a draft. What equals the saved state is marked rather than written twice. */
export const draftedEntry = ({ saved, ...entry }: RackEntry): object => ({
  ...entry,
  saved: saved === entry.pair ? 'same' : saved,
});

export const draftedTuneLog = (tuneLog: readonly RackTune[]): string => writeRack({ ...EMPTY_RACK, tuneLog });

export const draftedRackFile = (file: RackFile | null): object | null =>
  file && { ...file, rack: writeRack(file.rack) };

/** The whole project as text. */
export function draftOf(value: Project): string {
  return JSON.stringify({
    version: DRAFT_VERSION,
    ...value,
    rack: value.rack.map(draftedEntry),
    rackFile: draftedRackFile(value.rackFile),
    tuneLog: draftedTuneLog(value.tuneLog),
  });
}

/**
 * A project from a draft, or null when the text is none. Everything is checked again: pairs by their
 * schema, conditions by their ranges, ids for being in the rack. A setting that fails falls back to its
 * default (`settingsNotTaken` names it); pairs, gates, the rack file and the tune log, which a person made, are set aside as they were.
 */
export function projectFrom(text: string | null): Project | null {
  if (text === null) return null;
  let value: Record<string, unknown>;
  try {
    value = JSON.parse(text) as Record<string, unknown>;
  } catch {
    return null;
  }
  return typeof value === 'object' && value !== null ? projectOfDraft(value) : null;
}

/** The same of a draft that is read already; null when its layout is another version's. */
export function projectOfDraft(value: Readonly<Record<string, unknown>>): Project | null {
  if (value.version !== DRAFT_VERSION) return null;
  const earlier = unreadableFrom(value.unreadable ?? value.setAside);
  const entries = (Array.isArray(value.rack) ? value.rack : []).map(entryFrom);
  const rack = apart([...entries.flatMap(each => each.entry ?? []), ...earlier.back]);
  const ids = new Set(rack.map(entry => entry.id));
  const listed = Array.isArray(value.chosen) ? value.chosen : [];
  const chosen = Array.from({ length: MAX_CHOSEN }, (_, at) =>
    ids.has(listed[at]) ? String(listed[at]) : null,
  );
  const activeId = chosen.includes(value.activeId as string) ? (value.activeId as string) : null;
  const rackFile = rackFileFrom(value.rackFile);
  const course = courseFrom(value.course);
  const unreadable = [
    ...earlier.unreadable,
    ...entries.flatMap(each => each.unreadable ?? []),
    ...unreadableRackFile(value.rackFile, rackFile),
    ...unreadableTuneLog(value.tuneLog),
    ...unreadableGates(value.course, course.gates.length),
  ];
  return {
    rack,
    rackFile,
    tuneLog: tuneLogFrom(value.tuneLog, rackFile?.rack.tuneLog ?? []),
    dueAfter: dueAfterFrom(value.dueAfter),
    chosen,
    activeId: activeId ?? chosen.find(id => id !== null) ?? null,
    conditions: conditionsFrom(value),
    course,
    rules: rulesFrom(value.rules),
    slope: slopeFrom(value.slope, ids),
    board: boardFrom(value.board, ids),
    view: viewFrom(value.view),
    unreadable: apart(unreadable),
  };
}

function entryFrom(value: unknown, at: number): { entry?: RackEntry; unreadable?: Unreadable } {
  const { id, pair, saved, fileToken, fileName, inRackFile, readOnly } = (value ?? {}) as Record<
    string,
    unknown
  >;
  const own = typeof id === 'string' ? id : `draft ${at}`;
  const problems = checkPair(pair);
  if (problems.length > 0) return { unreadable: unreadablePair(own, pair, problems) };
  const savedPair = saved === 'same' ? pair : checkPair(saved).length === 0 ? saved : null;
  const entry = {
    id: own,
    pair: pair as Pair,
    saved: savedPair as Pair | null,
    ...(typeof fileToken === 'string' ? { fileToken } : {}),
    ...(typeof fileName === 'string' ? { fileName } : {}),
    ...(inRackFile === true ? { inRackFile } : {}),
    ...(typeof readOnly === 'string' ? { readOnly } : {}),
  };
  return { entry };
}

function rackFileFrom(value: unknown): RackFile | null {
  const { token, name, rack, savedIds, readOnly } = (value ?? {}) as Record<string, unknown>;
  if (typeof token !== 'string' || typeof name !== 'string' || typeof rack !== 'string') return null;
  const read = readRack(rack);
  if (!read.ok) return null;
  const ids = Array.isArray(savedIds) ? savedIds.filter(id => typeof id === 'string') : [];
  return { token, name, rack: read.rack, savedIds: ids, readOnly: readOnly === true };
}

function unreadableRackFile(value: unknown, read: RackFile | null): Unreadable[] {
  const { name, rack } = (value ?? {}) as Record<string, unknown>;
  if (read !== null || typeof rack !== 'string') return [];
  const called = typeof name === 'string' ? name : 'squad.rack.json';
  return [{ id: 'rack file', name: called, fileName: called, why: unread(rack), text: rack }];
}

function unreadableTuneLog(value: unknown): Unreadable[] {
  if (typeof value !== 'string' || readRack(value).ok) return [];
  const why = unread(value);
  return [{ id: 'tune log', name: t('draft.tuneLog'), fileName: 'tune-log.rack.json', why, text: value }];
}

function unreadableGates(value: unknown, kept: number): Unreadable[] {
  const { gates, name } = (value ?? {}) as Record<string, unknown>;
  const given = Array.isArray(gates) ? gates.length : 0;
  if (given === kept) return [];
  const why = t('draft.gatesUnreadable', { unread: given - kept, count: given });
  const called = typeof name === 'string' && name ? name : t('draft.set');
  const text = JSON.stringify(value, null, 2);
  return [{ id: 'set', name: called, fileName: 'set-of-gates.json', why, text }];
}

function unread(text: string): string {
  const read = readRack(text);
  return read.ok ? '' : inWords(read.problems[0]!);
}

/** The log; entries that are in the file are the file's own, so that only the others count as unsaved. */
function tuneLogFrom(value: unknown, inFile: readonly RackTune[]): readonly RackTune[] {
  const read = typeof value === 'string' ? readRack(value) : null;
  if (!read?.ok) return inFile;
  const text = (tune: RackTune) => JSON.stringify(tune.ok ? tune.entry : tune.raw);
  const known = new Map(inFile.map(tune => [text(tune), tune]));
  return read.rack.tuneLog.map(tune => known.get(text(tune)) ?? tune);
}

function dueAfterFrom(value: unknown): DueAfter {
  const given = (value ?? {}) as Partial<DueAfter>;
  const days = (wanted: unknown, otherwise: number) =>
    Number.isInteger(wanted) && Number(wanted) >= 1 ? Number(wanted) : otherwise;
  return {
    edgeDays: days(given.edgeDays, DEFAULT_DUE.edgeDays),
    waxDays: days(given.waxDays, DEFAULT_DUE.waxDays),
  };
}

function viewFrom(value: unknown): ViewSettings {
  const given = (value ?? {}) as Partial<ViewSettings>;
  const oneOf = <T>(options: readonly T[], wanted: unknown, otherwise: T): T =>
    options.includes(wanted as T) ? (wanted as T) : otherwise;
  return {
    question: oneOf(QUESTIONS, given.question, DEFAULT_VIEW.question),
    system: oneOf(['metric', 'imperial'] as const, given.system, DEFAULT_VIEW.system),
    theme: oneOf(THEMES, given.theme, DEFAULT_VIEW.theme),
    exaggeration: oneOf([1, 5] as const, given.exaggeration, DEFAULT_VIEW.exaggeration),
    board: false,
    page: null,
  };
}
