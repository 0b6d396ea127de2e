import { type Rack, type RackPair, rackOf, writePair, writeRack } from '../../core/pair/index.ts';
import { getHost } from '../host/index.ts';
import {
  fileStem,
  isUnsaved,
  learn,
  markRackSaved,
  markSaved,
  project,
  type RackEntry,
  rackFileUnsaved,
  report,
  tuneLogInFile,
  tuneLogUnsaved,
} from '../state/index.ts';

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
    // A pair of a rack file stays its pair: what is saved elsewhere is a copy, and the rack still wants saving.
    if (file && !entry.inRackFile) learn(markSaved(id, entry.pair, file));
    return file?.name ?? null;
  });
}

/** Saves everything unsaved: the rack file once (a new one where only that can hold the tune log), then each pair that has a file or changes of its own. */
export async function saveAll(): Promise<boolean> {
  if ((rackFileUnsaved.value || tuneLogUnsaved.value) && !(await saveRack())) return false;
  for (const entry of project.value.rack.filter(each => isUnsaved(each) && !each.inRackFile)) {
    if (!(await saveEntry(entry.id))) return false;
  }
  return true;
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
    const savedIds = entries.map(entry => entry.id);
    const written = new Map(entries.map(entry => [entry.id, entry.pair]));
    learn(markRackSaved(rackFile, { ...file, rack: content, savedIds, readOnly: false }, written));
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
