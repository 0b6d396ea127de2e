import { readEdges, readProfile } from '../../core/run/index.ts';
import { changeSlope, changeView, errorWords, report, type TextFile, t } from '../state/index.ts';

/** Rows of distance and height, m, as the ground of the run. */
export function takeProfile(file: TextFile): void {
  if (isRead(file, readProfile))
    changeSlope(t('files.slopeStep'), { ground: 'file', groundFile: kept(file) });
}

/** Rows of time, s, and edge angle, degrees, as its turns. */
export function takeProgramme(file: TextFile): void {
  if (isRead(file, readEdges))
    changeSlope(t('files.turnsStep'), { programme: 'file', programmeFile: kept(file) });
}

const kept = ({ name, text }: TextFile): TextFile => ({ name, text });

/** Whether the table can be read; its first fault is told with file and line. */
function isRead({ name, text }: TextFile, read: (text: string) => unknown): boolean {
  try {
    read(text);
  } catch (error) {
    report(t('files.atFault', { name, fault: errorWords(error) }), 'error');
    return false;
  }
  changeView({ question: 'slope' });
  report(t('files.read', { name }));
  return true;
}
