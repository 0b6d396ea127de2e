import { readGates } from '../../core/course/index.ts';
import type { OpenedFile } from '../host/index.ts';
import { takeIn } from '../rack/opening.ts';
import { changeView } from '../state/index.ts';
import { takeEdition } from '../views/rules/index.ts';
import { takeCourse } from '../views/set/course-files.ts';

/**
 * A file dropped on the window or handed over by the system goes where it belongs: gates become the set, limits
 * an edition of the rule check, everything else is the rack's.
 */
export function takeArrival(file: OpenedFile): void {
  if (/\.(csv|tsv|txt)$/i.test(file.name) && readGates(file.text).gates.length > 0) {
    takeCourse(file);
    changeView({ question: 'set' });
  } else if (/"format"\s*:\s*"turnwright\.rules"/.test(file.text)) {
    takeEdition(file);
  } else takeIn(file);
}
