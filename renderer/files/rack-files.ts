import { signal } from '@preact/signals';
import {
  type Pair,
  type RackPair,
  type ReadPair,
  type ReadRack,
  readPair,
  readRack,
  writePair,
  writeRack,
} from '../../core/pair/index.ts';
import type { OpenedFile } from '../host/index.ts';
import {
  addEntries,
  choose,
  edit,
  faultsInWords,
  freeLetter,
  inWords,
  isUnsaved,
  joinsRackFile,
  learn,
  markSaved,
  newId,
  type Project,
  project,
  type RackEntry,
  rackFileUnsaved,
  removeEntries,
  replacePair,
  report,
  tuneLogInFile,
} from '../state/index.ts';
import { counted } from './counted.ts';
import type { Incoming } from './incoming.ts';
import { saveRack } from './saving.ts';

type GoodPair = Extract<ReadPair, { ok: true }>;
type GoodRack = Extract<ReadRack, { ok: true }>;

/** A rack that came in a file, or pasted. */
interface ReadFile {
  readonly file: Incoming;
  readonly read: GoodRack;
}

/** A rack file that waits for an answer, because another one is open. */
export interface WaitingRack {
  readonly file: OpenedFile;
  readonly read: GoodRack;
}

/** Rack files to be asked about, the first one first. */
export const waitingRacks = signal<readonly WaitingRack[]>([]);

/** A pair joins the rack; what is wrong with it is told. Pasted, it is in no file. */
export function takePair(file: Incoming): void {
  const read = readPair(file.text);
  if (!read.ok) {
    report(`${file.name}: ${faultsInWords(read.problems)}`, 'error');
    return;
  }
  const { token } = file;
  const open = token !== undefined && project.value.rack.find(entry => entry.fileToken === token);
  if (open) openAgain({ ...file, token }, read, open);
  else if (token === undefined) addPair(file, read, null, null);
  else addPair(file, read, token);
}

/** `token` null leaves the pair without a file; `saved` null makes it one that is to be saved. */
function addPair(
  file: Incoming,
  { pair, readOnly, notes }: GoodPair,
  token: string | null,
  saved: Pair | null = pair,
): void {
  const entry: RackEntry = {
    id: newId(),
    pair,
    saved,
    ...(token === null ? {} : { fileToken: token, fileName: file.name }),
    ...(readOnly ? { readOnly: notes.map(inWords).join(' ') } : {}),
  };
  edit(`Open ${pair.name}`, before => choose(entry.id)(freeLetter(addEntries([entry])(before))));
  report(notes.length > 0 ? notes.map(inWords).join(' ') : `${pair.name} opened`);
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

/** A rack is opened, or waits for an answer where one is open; pasted, its pairs join what is there. */
export function takeRack(file: Incoming): void {
  const read = readRack(file.text);
  const { token } = file;
  if (!read.ok) {
    report(`${file.name}: ${inWords(read.problems[0]!)}`, 'error');
    return;
  }
  const { rackFile } = project.value;
  if (token === undefined) joinRack({ file, read });
  else if (rackFile === null) openRack({ file: { ...file, token }, read });
  else if (rackFile.token === token && writeRack(read.rack) === writeRack(rackFile.rack)) {
    report(`${file.name} is open already${rackFileUnsaved.value ? ', with changes not saved yet' : ''}.`);
  } else waitingRacks.value = [...waitingRacks.value, { file: { ...file, token }, read }];
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
const entriesOf = ({ read }: ReadFile): RackEntry[] =>
  read.rack.pairs
    .filter((each): each is Extract<RackPair, { ok: true }> => each.ok)
    .map(({ pair, readOnly, notes }) => ({
      id: newId(),
      pair,
      saved: null,
      inRackFile: true,
      ...(readOnly || read.readOnly
        ? { readOnly: notes.map(inWords).join(' ') || read.notes.map(inWords).join(' ') }
        : {}),
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
  tell(
    waiting,
    [`${counted(entries.length, 'pair')} opened from ${file.name}`, ...read.notes.map(inWords)].join('. '),
  );
}

/** The rack's pairs and log as new ones of the rack that is open, if one is. Its own file is left as it is. */
function joinRack(joining: ReadFile): void {
  const { file, read } = joining;
  const into = project.value.rackFile?.name;
  const entries = entriesOf(joining);
  edit(`Add the pairs of ${file.name}`, before =>
    addEntries(entries.map(entry => ({ ...entry, inRackFile: joinsRackFile(before) })))({
      ...before,
      tuneLog: [...before.tuneLog, ...read.rack.tuneLog.filter(tune => tune.ok)],
    }),
  );
  const saving = into === undefined ? '' : `; saving writes them into ${into}`;
  tell(joining, `${counted(entries.length, 'pair')} of ${file.name} added${saving}`);
}

function tell({ file, read }: ReadFile, done: string): void {
  if (read.problems.length === 0) report(done);
  else report(`${file.name}: ${faultsInWords(read.problems)}`, 'error');
}
