import { getHost } from '../host/index.ts';
import { toCsv } from '../kit/index.ts';
import { report } from '../state/index.ts';

/** Saves rows as CSV through the host and says so. */
export async function exportTable(
  name: string,
  rows: readonly (readonly (string | number)[])[],
): Promise<void> {
  try {
    if (await getHost().exportFile(name, 'text/csv', toCsv(rows))) report(`${name} saved`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}
