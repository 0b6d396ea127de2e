import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { getHost, type OpenedFile } from '../host/index.ts';
import { newId } from '../rack/new-id.ts';
import { addEntries, changeView, edit, joinsRackFile, project, report } from '../state/index.ts';
import { demoLog, demoSheet } from './demo-squad.ts';
import { entriesOf, faultSheet, lookOver, type SheetImport } from './import-sheet.ts';
import { day } from './squad-state.ts';

type SheetText = Pick<OpenedFile, 'name' | 'text' | 'note'>;

const sheets = signal<readonly SheetText[]>([]);

/** The sheet being looked over, the first of those that wait; null when none does. */
export const looking: ReadonlySignal<SheetImport | null> = computed(() => {
  const [sheet] = sheets.value;
  return sheet ? lookOver(sheet.name, sheet.text, project.peek().rack, sheet.note) : null;
});

/** How many more sheets wait behind the one being looked over. */
export const sheetsWaiting = computed(() => Math.max(0, sheets.value.length - 1));

/** Lays a sheet out on the squad's page to be looked over; nothing is taken in yet. */
export function lookAtSheet(sheet: SheetText): void {
  sheets.value = [...sheets.value, sheet];
  changeView({ page: 'squad' });
}

/** Done with the sheet being looked over, taken in or not. */
export function nextSheet(): void {
  sheets.value = sheets.value.slice(1);
}

/** Asks for sheets and lays them out to be looked over. */
export async function importFromFile(): Promise<void> {
  try {
    for (const file of await getHost().open('table')) lookAtSheet(file);
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
    const entries = entriesOf(pairs, newId, joinsRackFile(now));
    const grown = addEntries(entries)(now);
    return withLog ? { ...grown, tuneLog: [...grown.tuneLog, ...demoLog(entries, day.value)] } : grown;
  });
  const left = read.refused.length;
  report(
    `${pairs.length === 1 ? '1 pair' : `${pairs.length} pairs`} taken in from ${read.fileName}${left > 0 ? `; ${left === 1 ? '1 line' : `${left} lines`} could not be` : ''}. Undo takes them out again.`,
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
