import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { asCsvFile } from '../../core/table/index.ts';
import { getHost, type OpenedFile } from '../host/index.ts';
import {
  addEntries,
  changeView,
  edit,
  errorWords,
  joinsRackFile,
  newId,
  type Project,
  project,
  type RackEntry,
  report,
  t,
} from '../state/index.ts';
import { entriesOf, faultSheet, lookOver, type SheetImport } from './import-sheet.ts';
import type { ReadSheet } from './reading.ts';

interface WaitingSheet extends Pick<OpenedFile, 'name' | 'note'> {
  readonly read: ReadSheet;
}

const sheets = signal<readonly WaitingSheet[]>([]);

/** The sheet being looked over, the first of those that wait; null when none does. */
export const looking: ReadonlySignal<SheetImport | null> = computed(() => {
  const [sheet] = sheets.value;
  return sheet ? lookOver(sheet.name, sheet.read, project.peek().rack, sheet.note) : null;
});

/** How many more sheets wait behind the one being looked over. */
export const sheetsWaiting = computed(() => Math.max(0, sheets.value.length - 1));

/** Lays a sheet out on the squad's page to be looked over; nothing is taken in yet. */
export function lookAtSheet({ name, note }: Pick<OpenedFile, 'name' | 'note'>, read: ReadSheet): void {
  sheets.value = [...sheets.value, { name, note, read }];
  changeView({ page: 'squad' });
}

/** Done with the sheet being looked over, taken in or not. */
export function nextSheet(): void {
  sheets.value = sheets.value.slice(1);
}

/** Takes pairs of a sheet into the rack as one step, with the log that `logOf` gives them. */
export function takePairs(
  read: SheetImport,
  pairs: SheetImport['pairs'],
  logOf: (entries: readonly RackEntry[]) => Project['tuneLog'] = () => [],
): void {
  edit(t('files.importStep', { name: read.fileName }), now => {
    const entries = entriesOf(pairs, newId, joinsRackFile(now));
    const grown = addEntries(entries)(now);
    return { ...grown, tuneLog: [...grown.tuneLog, ...logOf(entries)] };
  });
  const left = read.refused.length;
  const imported = { pairs: t('common.pairs', { count: pairs.length }), name: read.fileName };
  report(
    left > 0
      ? t('files.importedInPart', { ...imported, lines: t('common.lines', { count: left }) })
      : t('files.imported', imported),
  );
}

/** Saves the lines at fault as a sheet, each with what was wrong. */
export async function saveFaults(read: SheetImport): Promise<void> {
  const name = `${read.fileName.replace(/\.[a-z]+$/i, '')}-at-fault.csv`;
  try {
    if (await getHost().exportFile(name, 'text/csv', asCsvFile(faultSheet(read))))
      report(t('common.saved', { name }));
  } catch (error) {
    report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
  }
}
