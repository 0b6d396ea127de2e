import { asCsvFile, writeCsvRows } from '../../core/table/index.ts';
import { getHost } from '../host/index.ts';
import { report } from '../state/index.ts';

/** Saves rows as CSV through the host and says so. */
export async function exportTable(
  name: string,
  rows: readonly (readonly (string | number)[])[],
): Promise<void> {
  try {
    const text = asCsvFile(writeCsvRows(rows.map(row => row.map(String))));
    if (await getHost().exportFile(name, 'text/csv', text)) report(`${name} saved`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}
