import { signal } from '@preact/signals';
import {
  type RackPair,
  type ReadPair,
  type ReadRack,
  readPair,
  readRack,
  writePair,
  writeRack,
} from '../../core/pair/index.ts';
import { getHost, type OpenedFile } from '../host/index.ts';
import { lookAtSheet } from '../squad/import-state.ts';
import {
  addEntries,
  choose,
  edit,
  freeLetter,
  isUnsaved,
  learn,
  markSaved,
  type Project,
  project,
  type RackEntry,
  rackFileUnsaved,
  removeEntries,
  replacePair,
  report,
  tuneLogInFile,
} from '../state/index.ts';
import { saveRack } from './files.ts';
import { newId } from './new-id.ts';

type GoodPair = Extract<ReadPair, { ok: true }>;
type GoodRack = Extract<ReadRack, { ok: true }>;

/** A rack file that waits for an answer, because another one is open. */
export interface WaitingRack {
  readonly file: OpenedFile;
  readonly read: GoodRack;
}

/** Rack files to be asked about, the first one first. */
export const waitingRacks = signal<readonly WaitingRack[]>([]);

/** Asks for files and puts their pairs into the rack. */
export async function openFiles(): Promise<void> {
  try {
    for (const file of await getHost().open('skis')) takeIn(file);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}

/** A file that was opened or dropped: its pairs join the rack, its problems are told; a table is looked over. */
export function takeIn(file: OpenedFile): void {
  if (/\.(csv|tsv|txt)$/i.test(file.name)) lookAtSheet(file);
  else if (isRack(file)) takeInRack(file);
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
  const open = project.value.rack.find(entry => entry.fileToken === file.token);
  if (open) openAgain(file, read, open);
  else addPair(file, read, file.token);
}

/** `token` null leaves the pair without a file. */
function addPair(file: OpenedFile, { pair, readOnly, notes }: GoodPair, token: string | null): void {
  const entry: RackEntry = {
    id: newId(),
    pair,
    saved: pair,
    ...(token === null ? {} : { fileToken: token, fileName: file.name }),
    ...(readOnly ? { readOnly: notes.join(' ') } : {}),
  };
  edit(`Open ${pair.name}`, before => choose(entry.id)(freeLetter(addEntries([entry])(before))));
  report(notes.length > 0 ? notes.join(' ') : `${pair.name} opened`);
}

/** The file of a pair that is in the rack already: two entries that save to one file would lose one's work. */
function openAgain(file: OpenedFile, read: GoodPair, open: RackEntry): void {
  const { name } = open.pair;
  const onDisk = writePair(read.pair);
  const seen = (now: Project) => choose(open.id)(freeLetter(now));
  if (open.saved && onDisk === writePair(open.saved)) {
    edit(`Choose ${name}`, seen);
    report(`${name} is in the rack already${isUnsaved(open) ? ', with changes not saved yet' : ''}.`);
  } else if (!isUnsaved(open)) {
    edit(`Read ${file.name} again`, before => seen(replacePair(open.id, read.pair)(before)));
    learn(markSaved(open.id, read.pair, file));
    report(`${file.name} was changed since it was opened and has been read again.`);
  } else {
    addPair(file, read, null);
    report(
      `${file.name} was changed by something else, and ${name} has changes not saved yet: both are in the rack, ` +
        'the one from the disk as a pair in no file.',
      'error',
    );
  }
}

function takeInRack(file: OpenedFile): void {
  const read = readRack(file.text);
  if (!read.ok) {
    report(`${file.name}: ${read.problems[0]!.message}`, 'error');
    return;
  }
  const { rackFile } = project.value;
  if (rackFile === null) openRack({ file, read });
  else if (rackFile.token === file.token && writeRack(read.rack) === writeRack(rackFile.rack)) {
    report(`${file.name} is open already${rackFileUnsaved.value ? ', with changes not saved yet' : ''}.`);
  } else waitingRacks.value = [...waitingRacks.value, { file, read }];
}

/** Takes the first waiting rack off the list and goes on as the person has chosen. */
export async function answer(how: 'save' | 'replace' | 'join' | 'leave'): Promise<void> {
  const [rack, ...others] = waitingRacks.value;
  if (!rack) return;
  // A save that fails is told; the question stays, and so does the rack that is open.
  if (how === 'save' && !(await saveRack())) return;
  waitingRacks.value = others;
  if (how === 'join') joinRack(rack);
  else if (how !== 'leave') openRack(rack);
}

/** The pairs that could be read, as entries of a rack file. */
const entriesOf = ({ read }: WaitingRack): RackEntry[] =>
  read.rack.pairs
    .filter((each): each is Extract<RackPair, { ok: true }> => each.ok)
    .map(({ pair, readOnly, notes }) => ({
      id: newId(),
      pair,
      saved: null,
      inRackFile: true,
      ...(readOnly || read.readOnly ? { readOnly: notes.join(' ') || read.notes.join(' ') } : {}),
    }));

/** The rack in place of the one that is open, whose pairs and log leave with it; one step, undone as one. */
function openRack(waiting: WaitingRack): void {
  const { file, read } = waiting;
  const entries = entriesOf(waiting).map(entry => ({ ...entry, saved: entry.pair, fileName: file.name }));
  edit(`Open ${file.name}`, before => {
    const gone = new Set(before.rackFile ? tuneLogInFile(before) : []);
    const left = removeEntries(entry => entry.inRackFile === true)(before);
    return addEntries(entries)({
      ...left,
      tuneLog: [...left.tuneLog.filter(tune => !gone.has(tune)), ...read.rack.tuneLog],
      rackFile: {
        token: file.token,
        name: file.name,
        rack: read.rack,
        savedIds: entries.map(entry => entry.id),
        readOnly: read.readOnly,
      },
    });
  });
  tell(waiting, [`${counted(entries.length)} opened from ${file.name}`, ...read.notes].join('. '));
}

/** The rack's pairs and log as new ones of the rack that is open. Its own file is left as it is. */
function joinRack(waiting: WaitingRack): void {
  const { file, read } = waiting;
  const into = project.value.rackFile!.name;
  const entries = entriesOf(waiting);
  edit(`Add the pairs of ${file.name}`, before =>
    addEntries(entries)({
      ...before,
      tuneLog: [...before.tuneLog, ...read.rack.tuneLog.filter(tune => tune.ok)],
    }),
  );
  tell(waiting, `${counted(entries.length)} of ${file.name} added; saving writes them into ${into}`);
}

const counted = (many: number): string => (many === 1 ? '1 pair' : `${many} pairs`);

function tell({ file, read }: WaitingRack, done: string): void {
  const [problem, ...more] = read.problems;
  if (!problem) report(done);
  else {
    report(`${file.name}: ${problem.message}${more.length ? ` (and ${more.length} more)` : ''}`, 'error');
  }
}
