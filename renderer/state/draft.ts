import { effect } from '@preact/signals';
import { checkPair, type Pair, type RackTune, rackOf, readRack, writeRack } from '../../core/pair/index.ts';
import { boardFrom } from './board-settings.ts';
import { courseFrom } from './course-edits.ts';
import {
  type Conditions,
  DEFAULT_CONDITIONS,
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
import { project } from './store.ts';

/** Where the draft is kept: the host's, or any two functions. */
export interface DraftStore {
  read(): Promise<string | null>;
  write(text: string | null): Promise<void>;
}

const VERSION = 1;
const PAUSE_MS = 400;
const EMPTY_RACK = rackOf('', []);

/** The whole project as text. What equals the saved state is marked rather than written twice. */
export function draftOf(value: Project): string {
  const rack = value.rack.map(({ saved, ...entry }) => ({
    ...entry,
    saved: saved === entry.pair ? 'same' : saved,
  }));
  const { rackFile } = value;
  const file = rackFile && { ...rackFile, rack: writeRack(rackFile.rack) };
  const tuneLog = writeRack({ ...EMPTY_RACK, tuneLog: value.tuneLog });
  return JSON.stringify({ version: VERSION, ...value, rack, rackFile: file, tuneLog });
}

/**
 * A project from a draft, or null when the text is none. Everything is checked again: pairs by their
 * schema, numbers for being numbers, ids for being in the rack. What fails falls back to its default.
 */
export function projectFrom(text: string | null): Project | null {
  if (text === null) return null;
  let value: Record<string, unknown>;
  try {
    value = JSON.parse(text) as Record<string, unknown>;
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null || value.version !== VERSION) return null;
  const rack = (Array.isArray(value.rack) ? value.rack : []).flatMap(entryFrom);
  const ids = new Set(rack.map(entry => entry.id));
  const listed = Array.isArray(value.chosen) ? value.chosen : [];
  const chosen = Array.from({ length: MAX_CHOSEN }, (_, at) =>
    ids.has(listed[at]) ? String(listed[at]) : null,
  );
  const activeId = chosen.includes(value.activeId as string) ? (value.activeId as string) : null;
  const rackFile = rackFileFrom(value.rackFile);
  return {
    rack,
    rackFile,
    tuneLog: tuneLogFrom(value.tuneLog, rackFile?.rack.tuneLog ?? []),
    dueAfter: dueAfterFrom(value.dueAfter),
    chosen,
    activeId: activeId ?? chosen.find(id => id !== null) ?? null,
    conditions: conditionsFrom(value.conditions),
    course: courseFrom(value.course),
    rules: rulesFrom(value.rules),
    slope: slopeFrom(value.slope, ids),
    board: boardFrom(value.board, ids),
    view: viewFrom(value.view),
  };
}

function entryFrom(value: unknown): RackEntry[] {
  const { id, pair, saved, fileToken, fileName, inRackFile, readOnly } = (value ?? {}) as Record<
    string,
    unknown
  >;
  if (typeof id !== 'string' || checkPair(pair).length > 0) return [];
  const savedPair = saved === 'same' ? pair : checkPair(saved).length === 0 ? saved : null;
  return [
    {
      id,
      pair: pair as Pair,
      saved: savedPair as Pair | null,
      ...(typeof fileToken === 'string' ? { fileToken } : {}),
      ...(typeof fileName === 'string' ? { fileName } : {}),
      ...(inRackFile === true ? { inRackFile } : {}),
      ...(typeof readOnly === 'string' ? { readOnly } : {}),
    },
  ];
}

function rackFileFrom(value: unknown): RackFile | null {
  const { token, name, rack, savedIds, readOnly } = (value ?? {}) as Record<string, unknown>;
  if (typeof token !== 'string' || typeof name !== 'string' || typeof rack !== 'string') return null;
  const read = readRack(rack);
  if (!read.ok) return null;
  const ids = Array.isArray(savedIds) ? savedIds.filter(id => typeof id === 'string') : [];
  return { token, name, rack: read.rack, savedIds: ids, readOnly: readOnly === true };
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

function conditionsFrom(value: unknown): Conditions {
  const given = (value ?? {}) as Record<string, unknown>;
  const conditions: Record<string, number> = { ...DEFAULT_CONDITIONS };
  for (const key of Object.keys(conditions)) {
    if (typeof given[key] === 'number' && Number.isFinite(given[key])) conditions[key] = given[key] as number;
  }
  return conditions as unknown as Conditions;
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

/** Writes the draft a moment after every change; a failure is told once. Returns a function that stops. */
export function keepDraft(store: DraftStore, onFailure: (message: string) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let failed = false;
  const write = () => {
    timer = undefined;
    store.write(draftOf(project.peek())).then(
      () => {
        failed = false;
      },
      (error: Error) => {
        if (!failed) onFailure(`Work in progress could not be kept: ${error.message}`);
        failed = true;
      },
    );
  };
  const stop = effect(() => {
    void project.value;
    clearTimeout(timer);
    timer = setTimeout(write, PAUSE_MS);
  });
  const flush = () => {
    if (timer === undefined) return;
    clearTimeout(timer);
    write();
  };
  // A page that is left or put aside may never run its timer.
  globalThis.addEventListener?.('pagehide', flush);
  return () => {
    stop();
    globalThis.removeEventListener?.('pagehide', flush);
    flush();
  };
}
