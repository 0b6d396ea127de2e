import { type Rack, type RackPair, rackOf, writePair, writeRack } from '../../core/pair/index.ts';
import { getHost } from '../host/index.ts';
import {
  amendAllSteps,
  errorWords,
  fileStem,
  isUnsaved,
  markRackSaved,
  markSaved,
  project,
  type RackEntry,
  rackFileUnsaved,
  report,
  t,
  tuneLogInFile,
  tuneLogUnsaved,
} from '../state/index.ts';

/** Saves a pair to its file, asking where when it has none. A pair of a rack file saves the rack. */
export async function saveEntry(id: string, elsewhere = false): Promise<boolean> {
  const entry = project.value.rack.find(each => each.id === id);
  if (!entry) return false;
  if (entry.readOnly && !elsewhere) {
    report(t('files.notSavedReadOnly', { name: entry.pair.name, why: entry.readOnly }), 'error');
    return false;
  }
  if (entry.inRackFile && !elsewhere) return saveRack();
  const text = writePair(entry.pair);
  return reported(entry.pair.name, async () => {
    const file =
      entry.fileToken && !elsewhere
        ? await getHost().save(entry.fileToken, text)
        : await getHost().saveAs(`${fileStem(entry.pair.name)}.pair.json`, text);
    // A pair of a rack file stays its pair: what is saved elsewhere is a copy, and the rack still wants saving.
    if (file && !entry.inRackFile) amendAllSteps(markSaved(id, entry.pair, file));
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
    report(t('files.notSavedNewer', { name: rackFile.name }), 'error');
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
  return reported(t('files.theRack'), async () => {
    const file = rackFile
      ? await getHost().save(rackFile.token, text)
      : await getHost().saveAs('squad.rack.json', text);
    if (!file) return null;
    const savedIds = entries.map(entry => entry.id);
    const written = new Map(entries.map(entry => [entry.id, entry.pair]));
    amendAllSteps(markRackSaved(rackFile, { ...file, rack: content, savedIds, readOnly: false }, written));
    return file.name;
  });
}

/** The rack as read with these pairs; what could not be read stays at the end, as it came. */
function withPairs(rack: Rack, entries: readonly RackEntry[], tuneLog: Rack['tuneLog']): Rack {
  const pairs: RackPair[] = entries.map(({ pair }) => ({ ok: true, pair, readOnly: false, notes: [] }));
  return { ...rack, tuneLog, pairs: [...pairs, ...rack.pairs.filter(each => !each.ok)] };
}

async function reported(name: string, write: () => Promise<string | null>): Promise<boolean> {
  try {
    const file = await write();
    if (file !== null) report(t('common.savedTo', { name, file }));
    return file !== null;
  } catch (error) {
    report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
    return false;
  }
}
