import { readEdges, readProfile } from '../../core/run/index.ts';
import { changeSlope, changeView, errorWords, report, type TextFile } from '../state/index.ts';

/** Rows of distance and height, m, as the ground of the run. */
export function takeProfile(file: TextFile): void {
  if (isRead(file, readProfile)) changeSlope('Ground', { ground: 'file', groundFile: kept(file) });
}

/** Rows of time, s, and edge angle, degrees, as its turns. */
export function takeProgramme(file: TextFile): void {
  if (isRead(file, readEdges)) changeSlope('Turns', { programme: 'file', programmeFile: kept(file) });
}

const kept = ({ name, text }: TextFile): TextFile => ({ name, text });

/** Whether the table can be read; its first fault is told with file and line. */
function isRead({ name, text }: TextFile, read: (text: string) => unknown): boolean {
  try {
    read(text);
  } catch (error) {
    report(`${name}, ${errorWords(error)}`, 'error');
    return false;
  }
  changeView({ question: 'slope' });
  report(`${name} read`);
  return true;
}
