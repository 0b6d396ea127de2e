import { readEdges, readProfile } from '../../../core/run/index.ts';
import { getHost } from '../../host/index.ts';
import { changeSlope, errorWords, report, type TextFile } from '../../state/index.ts';

/** Asks for a table and reads it; the first fault is told with file and line. */
async function askFor(read: (text: string) => unknown): Promise<TextFile | null> {
  let name = '';
  try {
    const [file] = await getHost().open('table');
    if (!file) return null;
    name = file.name;
    read(file.text);
    // Also takes the place of what was said about a file before.
    report(`${name} read`);
    return { name, text: file.text };
  } catch (error) {
    report(name === '' ? errorWords(error) : `${name}, ${errorWords(error)}`, 'error');
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
