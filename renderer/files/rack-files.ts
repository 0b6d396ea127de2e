import { signal } from '@preact/signals';
import {
  type Pair,
  type RackPair,
  type ReadPair,
  type ReadRack,
  writePair,
  writeRack,
} from '../../core/pair/index.ts';
import type { OpenedFile } from '../host/index.ts';
import {
  addEntries,
  amendAllSteps,
  choose,
  edit,
  faultsInWords,
  freeLetter,
  inWords,
  isUnsaved,
  joinsRackFile,
  markSaved,
  newId,
  type Project,
  project,
  type RackEntry,
  rackFileUnsaved,
  removeEntries,
  replacePair,
  report,
  t,
  tuneLogInFile,
} from '../state/index.ts';
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
export function takePair(file: Incoming, read: ReadPair): void {
  if (!read.ok) {
    report(t('files.atFault', { name: file.name, fault: faultsInWords(read.problems) }), 'error');
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
  edit(t('files.openStep', { name: pair.name }), before =>
    choose(entry.id)(freeLetter(addEntries([entry])(before))),
  );
  report(notes.length > 0 ? notes.map(inWords).join(' ') : t('files.opened', { name: pair.name }));
}

/** The file of a pair that is in the rack already: two entries that save to one file would lose one's work. */
function openAgain(file: OpenedFile, read: GoodPair, open: RackEntry): void {
  const { name } = open.pair;
  const onDisk = writePair(read.pair);
  const seen = (now: Project) => choose(open.id)(freeLetter(now));
  if (open.saved && onDisk === writePair(open.saved)) {
    edit(t('files.chooseStep', { name }), seen);
    report(t(isUnsaved(open) ? 'files.inRackAlreadyUnsaved' : 'files.inRackAlready', { name }));
  } else if (!isUnsaved(open)) {
    edit(t('files.readAgainStep', { name: file.name }), before =>
      seen(replacePair(open.id, read.pair)(before)),
    );
    amendAllSteps(markSaved(open.id, read.pair, file));
    report(t('files.readAgain', { name: file.name }));
  } else {
    addPair(file, read, null);
    report(t('files.bothInRack', { file: file.name, name }), 'error');
  }
}

/** A rack is opened, or waits for an answer where one is open; pasted, its pairs join what is there. */
export function takeRack(file: Incoming, read: ReadRack): void {
  const { token } = file;
  if (!read.ok) {
    report(t('files.atFault', { name: file.name, fault: read.problems[0]! }), 'error');
    return;
  }
  const { rackFile } = project.value;
  if (token === undefined) joinRack({ file, read });
  else if (rackFile === null) openRack({ file: { ...file, token }, read });
  else if (rackFile.token === token && writeRack(read.rack) === writeRack(rackFile.rack)) {
    report(t(rackFileUnsaved.value ? 'files.openAlreadyUnsaved' : 'files.openAlready', { name: file.name }));
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
  edit(t('files.openStep', { name: file.name }), before => {
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
  const opened = t('files.rackOpened', {
    pairs: t('common.pairs', { count: entries.length }),
    name: file.name,
  });
  tell(waiting, [opened, ...read.notes.map(inWords)].join('. '));
}

/** The rack's pairs and log as new ones of the rack that is open, if one is. Its own file is left as it is. */
function joinRack(joining: ReadFile): void {
  const { file, read } = joining;
  const into = project.value.rackFile?.name;
  const entries = entriesOf(joining);
  edit(t('files.addPairsStep', { name: file.name }), before =>
    addEntries(entries.map(entry => ({ ...entry, inRackFile: joinsRackFile(before) })))({
      ...before,
      tuneLog: [...before.tuneLog, ...read.rack.tuneLog.filter(tune => tune.ok)],
    }),
  );
  const added = { pairs: t('common.pairs', { count: entries.length }), name: file.name };
  tell(
    joining,
    into === undefined ? t('files.pairsAdded', added) : t('files.pairsAddedInto', { ...added, into }),
  );
}

function tell({ file, read }: ReadFile, done: string): void {
  if (read.problems.length === 0) report(done);
  else report(t('files.atFault', { name: file.name, fault: faultsInWords(read.problems) }), 'error');
}
