import { signal } from '@preact/signals';
import {
  type GateProblem,
  readGates,
  rhythmicSet,
  setDiscipline,
  unreadComments,
} from '../../../core/course/index.ts';
import { categories } from '../../../core/rules/index.ts';
import { demoSets } from '../../demo/sets/index.ts';
import { getHost } from '../../host/index.ts';
import {
  type Course,
  changeCourse,
  conditions,
  course,
  courseText,
  fileStem,
  markCourseSaved,
  report,
} from '../../state/index.ts';
import { gateCount } from './gate-words.ts';

/** What could not be read of the file opened last, row by row. */
export const fileProblems = signal<{
  readonly file: string;
  readonly read: number;
  readonly problems: readonly GateProblem[];
} | null>(null);

const DISCIPLINE = { SL: 'slalom', GS: 'giant slalom' } as const;

/** The invented set of a discipline, on its own slope and at its speed, as one undo step. */
export function takeDemo(discipline: Course['discipline']): void {
  fileProblems.value = null;
  changeCourse(`Demo set, ${DISCIPLINE[discipline]}`, ({ category }) => ({
    ...demoSets[discipline],
    // Who races does not change with the gates.
    category,
  }));
}

/** Puts the gates of a file in place of the present ones; what is at fault is told, and kept for its file. */
export function takeCourse(file: { readonly name: string; readonly text: string }): void {
  const { gates, stated, problems } = readGates(file.text);
  fileProblems.value = problems.length > 0 ? { file: file.name, read: gates.length, problems } : null;
  if (gates.length === 0) {
    report(`${file.name}: no gates found; the set stays as it is`, 'error');
    return;
  }
  const { category: written, comments = [], ...of } = stated;
  const category = categories.find(each => each.toLowerCase() === written?.toLowerCase());
  const unknown = written !== undefined && category === undefined;
  const kept = unknown ? unreadComments([{ row: 0, field: 'category', raw: written }]) : [];
  changeCourse(`Open ${file.name}`, before => {
    const opened: Course = {
      ...before,
      discipline: setDiscipline(gates),
      // What the file does not state stays as it was asked about.
      ...of,
      ...(category && { category }),
      name: file.name.replace(/\.(csv|tsv|txt)$/i, ''),
      comments: [...comments, ...kept],
      gates,
      demo: false,
    };
    return { ...opened, inFile: courseText(opened) };
  });
  const unread = problems.length > 0 ? `, ${problems.length} not read` : '';
  const nobody = unknown ? `; category "${written}" is none of ${categories.join(', ')}` : '';
  report(`${file.name}: ${gateCount(gates.length)}${unread}${nobody}`, unread || unknown ? 'error' : 'note');
}

export async function openCourse(): Promise<void> {
  try {
    const [file, ...more] = await getHost().open('course');
    if (!file) return;
    takeCourse(file);
    if (more.length > 0) report(`${file.name} opened; one set at a time, so not the other ${more.length}`);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}

/** `pala-ostrelle-slalom.csv`: what the set is called, and what it is where that does not say so already. */
export function courseFileName({ name, discipline }: Pick<Course, 'name' | 'discipline'>): string {
  const stem = fileStem(name || 'set');
  const kind = fileStem(DISCIPLINE[discipline]);
  return `${stem.includes('slalom') ? stem : `${stem}-${kind}`}.csv`;
}

export async function saveCourse(): Promise<void> {
  const { name, gates } = course.value;
  const file = courseFileName(course.value);
  const text = courseText(course.value);
  try {
    if (await getHost().exportFile(file, 'text/csv', text)) {
      markCourseSaved(name, text);
      report(`${file} saved, ${gateCount(gates.length)}`);
    }
  } catch (error) {
    report(`${file} could not be saved: ${(error as Error).message}`, 'error');
  }
}

/** The rhythmic set as its sliders say, on the slope and at the speed of the set before. */
export function makeRhythmic(): void {
  const { gates, gateSpacingM, gateOffsetM } = conditions.value;
  const made = rhythmicSet(Math.round(gates), gateSpacingM, gateOffsetM);
  fileProblems.value = null;
  changeCourse('Make a rhythmic set', before => ({
    ...before,
    name: `Rhythmic set ${Number(gateSpacingM.toFixed(2))} m by ${Number(gateOffsetM.toFixed(2))} m`,
    discipline: setDiscipline(made),
    gates: made,
    demo: false,
    inFile: null,
    comments: [],
  }));
}
