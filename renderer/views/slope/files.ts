import { readEdges, readProfile, TableTextError } from '../../../core/run/index.ts';
import { getHost } from '../../host/index.ts';
import { changeSlope, report, type TextFile } from '../../state/index.ts';

/** Asks for a table and reads it; the first fault is told with its line. */
async function askFor(read: (text: string) => unknown): Promise<TextFile | null> {
  try {
    const [file] = await getHost().open('table');
    if (!file) return null;
    read(file.text);
    return { name: file.name, text: file.text };
  } catch (error) {
    const first = error instanceof TableTextError ? error.problems[0]! : (error as Error).message;
    report(first, 'error');
    return null;
  }
}

/** Rows of distance and height, m. */
export async function openProfile(): Promise<void> {
  const file = await askFor(readProfile);
  if (!file) return;
  changeSlope('Ground', { ground: 'file', groundFile: file });
}

/** Rows of time, s, and edge angle, degrees. */
export async function openProgramme(): Promise<void> {
  const file = await askFor(readEdges);
  if (!file) return;
  changeSlope('Turns', { programme: 'file', programmeFile: file });
}
