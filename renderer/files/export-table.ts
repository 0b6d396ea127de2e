import { asCsvFile, writeCsvRows } from '../../core/table/index.ts';
import { getHost } from '../host/index.ts';
import { errorWords, report, t } from '../state/index.ts';

/** Saves rows as CSV through the host and says so. */
export async function exportTable(
  name: string,
  rows: readonly (readonly (string | number)[])[],
): Promise<void> {
  try {
    const text = asCsvFile(writeCsvRows(rows.map(row => row.map(String))));
    if (await getHost().exportFile(name, 'text/csv', text)) report(t('common.saved', { name }));
  } catch (error) {
    report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
  }
}
