import * as z from 'zod';
import { type FieldFault, plainFault } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { accepting, acceptingKey, acceptingShape, list, quantity, text } from './fields.ts';
import { jsonText } from './json-text.ts';
import { inWrittenOrder, pairFrom } from './pair-file.ts';
import { type Pair, VERSION } from './pair-schema.ts';
import { problemsWith, readJson } from './read-json.ts';

const RACK_FORMAT = 'turnwright.rack';
const RACK_VERSION = 1;

const tuneEntrySchema = z
  .looseObject(
    {
      pairName: text(1, 120, 'Name of the pair tuned').optional(),
      pairId: text(1, 80, 'Its id').optional(),
      date: z.iso.date(acceptingKey('accepted.date')),
      sideAngleDeg: quantity(80, 90, 'degrees', 'Side-edge angle').optional(),
      baseBevelDeg: quantity(0, 5, 'degrees', 'Base bevel').optional(),
      wax: text(0, 120, 'Wax').optional(),
      structure: text(0, 120, 'Base structure').optional(),
      note: text(0, 2000, 'Note').optional(),
    },
    acceptingShape('{ pairName | pairId, date, … }'),
  )
  .refine(entry => entry.pairName !== undefined || entry.pairId !== undefined, {
    ...acceptingKey('pair.nameOrId'),
    path: ['pairName'],
  });

/** What was done to a pair, and when. */
export type TuneEntry = z.infer<typeof tuneEntrySchema>;

const rackSchema = z.looseObject(
  {
    format: z.literal(RACK_FORMAT, accepting({ oneOf: [`"${RACK_FORMAT}"`] })),
    version: z.int(VERSION).min(1, VERSION),
    owner: text(0, 120, 'Owner label').optional(),
    pairs: list(z.unknown(), 0, 100_000, 'pair.pairs'),
    tuneLog: list(z.unknown(), 0, 1_000_000, 'pair.tuneEntries').optional(),
  },
  acceptingKey('accepted.object'),
);

/** An item of a list that could not be read: kept as it came, so that saving the rack loses nothing. */
export interface Unread {
  readonly ok: false;
  readonly index: number;
  readonly raw: unknown;
  readonly problems: readonly FieldFault[];
}

export type RackPair =
  | {
      readonly ok: true;
      readonly pair: Pair;
      readonly readOnly: boolean;
      readonly notes: readonly Sentence[];
    }
  | Unread;

export type RackTune = { readonly ok: true; readonly entry: TuneEntry } | Unread;

/** A rack of pairs in file order, readable or not. */
export interface Rack {
  readonly owner: string;
  readonly pairs: readonly RackPair[];
  readonly tuneLog: readonly RackTune[];
  /** Fields this version does not know, carried along. */
  readonly rest: Readonly<Record<string, unknown>>;
}

export type ReadRack =
  | {
      readonly ok: true;
      readonly rack: Rack;
      readonly readOnly: boolean;
      readonly notes: readonly Sentence[];
      /** Problems of single pairs and tune entries, fields prefixed `pairs[3].`; the others are usable. */
      readonly problems: readonly FieldFault[];
    }
  | { readonly ok: false; readonly problems: readonly FieldFault[] };

/** Read a rack file. One bad pair is reported with its index and does not cost the others. Never throws. */
export function readRack(fileText: string, progress?: (share: number) => void): ReadRack {
  const json = readJson(fileText);
  if (!json.ok) return json;
  const problems = problemsWith(rackSchema, json.value);
  if (problems.length > 0) return { ok: false, problems };
  const {
    format: _format,
    version,
    owner,
    pairs,
    tuneLog,
    ...rest
  } = json.value as z.infer<typeof rackSchema>;
  const readPairs = pairs.map((raw, index): RackPair => {
    progress?.(index / pairs.length);
    const read = pairFrom(raw);
    return read.ok ? read : unread(index, raw, read.problems, 'pairs');
  });
  const readTunes = (tuneLog ?? []).map((raw, index): RackTune => {
    const wrong = problemsWith(tuneEntrySchema, raw);
    return wrong.length === 0 ? { ok: true, entry: raw as TuneEntry } : unread(index, raw, wrong, 'tuneLog');
  });
  const newer = version > RACK_VERSION;
  return {
    ok: true,
    rack: { owner: owner ?? '', pairs: readPairs, tuneLog: readTunes, rest },
    readOnly: newer,
    notes: [
      ...json.notes,
      ...(newer ? [{ key: 'pair.newerRack', values: { version } } as const] : []),
      ...readPairs.flatMap(read => (read.ok ? read.notes : [])),
    ],
    problems: [...readPairs, ...readTunes].flatMap(read => (read.ok ? [] : read.problems)),
  };
}

/** The file text of a rack: every item in its place, those that could not be read as they came. */
export function writeRack(rack: Rack): string {
  const file = {
    format: RACK_FORMAT,
    version: RACK_VERSION,
    owner: rack.owner,
    pairs: rack.pairs.map(read => (read.ok ? inWrittenOrder(read.pair) : read.raw)),
    tuneLog: rack.tuneLog.map(read => (read.ok ? read.entry : read.raw)),
    ...rack.rest,
  };
  return jsonText(file);
}

/** A rack of these pairs with an empty tune log. */
export function rackOf(owner: string, pairs: readonly Pair[]): Rack {
  return {
    owner,
    pairs: pairs.map(pair => ({ ok: true, pair, readOnly: false, notes: [] })),
    tuneLog: [],
    rest: {},
  };
}

function unread(index: number, raw: unknown, problems: readonly FieldFault[], listName: string): Unread {
  const named = problems.map(problem => {
    const item = `${listName}[${index}]`;
    return plainFault(problem, { field: problem.field === 'file' ? item : `${item}.${problem.field}` });
  });
  return { ok: false, index, raw, problems: named };
}
