import { signal } from '@preact/signals';
import { getHost } from '../host/index.ts';
import { newId } from '../rack/new-id.ts';
import { addEntries, edit, project, report } from '../state/index.ts';
import { demoLog, demoSheet } from './demo-squad.ts';
import { entriesOf, faultSheet, lookOver, type SheetImport } from './import-sheet.ts';
import { day } from './squad-state.ts';

/** The sheet being looked over; null when none is. */
export const looking = signal<SheetImport | null>(null);

/** Asks for a sheet and lays it out to be looked over; nothing is taken in yet. */
export async function importFromFile(): Promise<void> {
  try {
    const [file] = await getHost().open('table');
    if (file) looking.value = lookOver(file.name, file.text, project.value.rack);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}

/** Takes the demo club's sheet in at once, with an invented tune log; undo takes it out again. */
export function importDemo(): void {
  const read = lookOver(demoSheet.name, demoSheet.text, project.value.rack);
  const fresh = read.pairs.filter(each => !each.known);
  if (fresh.length === 0) {
    report('The demo squad is in the rack already.');
    return;
  }
  takeIn(read, fresh, true);
}

/** Takes pairs of a sheet into the rack as one step. */
export function takeIn(read: SheetImport, pairs: SheetImport['pairs'], withLog = false): void {
  edit(`Import ${read.fileName}`, now => {
    const entries = entriesOf(pairs, newId, now.rackFile !== null);
    const grown = addEntries(entries)(now);
    return withLog ? { ...grown, tuneLog: [...grown.tuneLog, ...demoLog(entries, day.value)] } : grown;
  });
  const left = read.refused.length;
  report(
    `${pairs.length} pairs taken in from ${read.fileName}${left > 0 ? `; ${left} lines could not be` : ''}. Undo takes them out again.`,
  );
}

/** Saves the lines at fault as a sheet, each with what was wrong. */
export async function saveFaults(read: SheetImport): Promise<void> {
  const name = `${read.fileName.replace(/\.[a-z]+$/i, '')}-at-fault.csv`;
  try {
    if (await getHost().exportFile(name, 'text/csv', faultSheet(read))) report(`${name} saved`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}
