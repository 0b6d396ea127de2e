import {
  type Pair,
  type Rack,
  type RackPair,
  rackOf,
  readPair,
  readRack,
  writePair,
  writeRack,
} from '../../core/pair/index.ts';
import { getHost, type OpenedFile } from '../host/index.ts';
import {
  addEntries,
  adjust,
  choose,
  edit,
  freeLetter,
  isUnsaved,
  markSaved,
  project,
  type RackEntry,
  rackFileUnsaved,
  report,
  tuneLogInFile,
} from '../state/index.ts';
import { newId } from './new-id.ts';

/** Asks for files and puts their pairs into the rack. */
export async function openFiles(): Promise<void> {
  try {
    for (const file of await getHost().open('skis')) takeIn(file);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}

/** A pair or rack file that was opened or dropped: its pairs join the rack, its problems are told. */
export function takeIn(file: OpenedFile): void {
  if (isRack(file)) takeInRack(file);
  else takeInPair(file);
}

/** A rack says so in its `format`; everything else is read, and complained about, as a pair. */
function isRack({ name, text }: OpenedFile): boolean {
  return (
    /"format"\s*:\s*"turnwright\.rack"/.test(text) ||
    (/\.rack\.json$/i.test(name) && !/"turnwright\.pair"/.test(text))
  );
}

function takeInPair(file: OpenedFile): void {
  const read = readPair(file.text);
  if (!read.ok) {
    const [first, ...more] = read.problems;
    report(`${file.name}: ${first!.message}${more.length ? ` (and ${more.length} more)` : ''}`, 'error');
    return;
  }
  const entry: RackEntry = {
    id: newId(),
    pair: read.pair,
    saved: read.pair,
    fileToken: file.token,
    fileName: file.name,
    ...(read.readOnly ? { readOnly: read.notes.join(' ') } : {}),
  };
  edit(`Open ${read.pair.name}`, before => choose(entry.id)(freeLetter(addEntries([entry])(before))));
  report(read.notes.length > 0 ? read.notes.join(' ') : `${read.pair.name} opened`);
}

function takeInRack(file: OpenedFile): void {
  const read = readRack(file.text);
  if (!read.ok) {
    report(`${file.name}: ${read.problems[0]!.message}`, 'error');
    return;
  }
  const readable = read.rack.pairs.filter((each): each is Extract<RackPair, { ok: true }> => each.ok);
  const entries = readable.map(
    ({ pair, readOnly, notes }): RackEntry => ({
      id: newId(),
      pair,
      saved: pair,
      fileName: file.name,
      inRackFile: true,
      ...(readOnly || read.readOnly ? { readOnly: notes.join(' ') || read.notes.join(' ') } : {}),
    }),
  );
  edit(`Open ${file.name}`, before => {
    // One rack file is open at a time; pairs of the one before stay, as pairs without a file.
    const rack = before.rack.map(entry => (entry.inRackFile ? { ...entry, inRackFile: false } : entry));
    return addEntries(entries)({ ...before, rack, tuneLog: [...before.tuneLog, ...read.rack.tuneLog] });
  });
  adjust(after => ({
    ...after,
    rackFile: {
      token: file.token,
      name: file.name,
      rack: read.rack,
      savedIds: entries.map(entry => entry.id),
      readOnly: read.readOnly,
    },
  }));
  const [problem, ...more] = read.problems;
  if (problem)
    report(`${file.name}: ${problem.message}${more.length ? ` (and ${more.length} more)` : ''}`, 'error');
  else report([`${entries.length} pairs opened from ${file.name}`, ...read.notes].join('. '));
}

/** Saves a pair to its file, asking where when it has none. A pair of a rack file saves the rack. */
export async function saveEntry(id: string, elsewhere = false): Promise<boolean> {
  const entry = project.value.rack.find(each => each.id === id);
  if (!entry) return false;
  if (entry.readOnly && !elsewhere) {
    report(`${entry.pair.name} was not saved: ${entry.readOnly}`, 'error');
    return false;
  }
  if (entry.inRackFile && !elsewhere) return saveRack();
  const text = writePair(entry.pair);
  return told(entry.pair.name, async () => {
    const file =
      entry.fileToken && !elsewhere
        ? await getHost().save(entry.fileToken, text)
        : await getHost().saveAs(`${fileStem(entry.pair.name)}.pair.json`, text);
    if (file) adjust(markSaved(id, entry.pair, file));
    return file?.name ?? null;
  });
}

/** Saves everything unsaved: the rack file once, then each pair that has a file or changes of its own. */
export async function saveAll(): Promise<void> {
  if (rackFileUnsaved.value && !(await saveRack())) return;
  for (const entry of project.value.rack.filter(each => isUnsaved(each) && !each.inRackFile)) {
    if (!(await saveEntry(entry.id))) return;
  }
}

/** Writes the open rack file; with none open, every pair of the rack goes into a new one. */
export async function saveRack(): Promise<boolean> {
  const { rack, rackFile } = project.value;
  const entries = rackFile ? rack.filter(entry => entry.inRackFile) : rack;
  if (rackFile?.readOnly) {
    report(`${rackFile.name} was not saved: it was written by a newer version and is read-only`, 'error');
    return false;
  }
  const tuneLog = tuneLogInFile(project.value);
  const content = rackFile
    ? withPairs(rackFile.rack, entries, tuneLog)
    : {
        ...rackOf(
          '',
          entries.map(entry => entry.pair),
        ),
        tuneLog,
      };
  const text = writeRack(content);
  return told('The rack', async () => {
    const file = rackFile
      ? await getHost().save(rackFile.token, text)
      : await getHost().saveAs('squad.rack.json', text);
    if (!file) return null;
    const written = new Map<string, Pair>(entries.map(entry => [entry.id, entry.pair]));
    adjust(now => ({
      ...now,
      rackFile: {
        ...file,
        rack: content,
        savedIds: entries.map(entry => entry.id),
        readOnly: false,
      },
      rack: now.rack.map(entry => {
        const saved = written.get(entry.id);
        return saved ? { ...entry, saved, inRackFile: true, fileName: file.name } : entry;
      }),
    }));
    return file.name;
  });
}

/** The rack as read with these pairs; what could not be read stays at the end, as it came. */
function withPairs(rack: Rack, entries: readonly RackEntry[], tuneLog: Rack['tuneLog']): Rack {
  const pairs: RackPair[] = entries.map(({ pair }) => ({ ok: true, pair, readOnly: false, notes: [] }));
  return { ...rack, tuneLog, pairs: [...pairs, ...rack.pairs.filter(each => !each.ok)] };
}

async function told(what: string, write: () => Promise<string | null>): Promise<boolean> {
  try {
    const name = await write();
    if (name !== null) report(`${what} saved to ${name}`);
    return name !== null;
  } catch (error) {
    report(`${what} could not be saved: ${(error as Error).message}`, 'error');
    return false;
  }
}

/** A pair's name as a file name. */
export function fileStem(name: string): string {
  return (
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'pair'
  );
}
