import { signal } from '@preact/signals';
import {
  type GateList,
  type GateProblem,
  readGates,
  setDiscipline,
  unreadComments,
} from '../../core/course/index.ts';
import { categories } from '../../core/rules/index.ts';
import { asCsvFile } from '../../core/table/index.ts';
import { getHost } from '../host/index.ts';
import {
  asUsual,
  type Course,
  changeCourse,
  course,
  courseText,
  errorWords,
  fileStem,
  markCourseSaved,
  report,
  t,
} from '../state/index.ts';

/** What could not be read of the file opened last, row by row. */
export const fileProblems = signal<{
  readonly file: string;
  readonly read: number;
  readonly problems: readonly GateProblem[];
} | null>(null);

/** What a set is, in the name of its file. */
const STEM = { SL: 'slalom', GS: 'giant-slalom' } as const;

/** Puts the gates of a file in place of the present ones; what is at fault is told, and kept for its file. */
export function takeCourse(
  file: { readonly name: string; readonly text: string },
  { gates, stated, problems }: GateList = readGates(file.text),
): void {
  fileProblems.value = problems.length > 0 ? { file: file.name, read: gates.length, problems } : null;
  if (gates.length === 0) {
    report(t('files.noGates', { name: file.name }), 'error');
    return;
  }
  const { category: written, comments = [], ...of } = stated;
  const category = categories.find(each => each.toLowerCase() === written?.toLowerCase());
  const unknown = written !== undefined && category === undefined;
  const kept = unknown ? unreadComments([{ row: 0, field: 'category', raw: written }]) : [];
  changeCourse(t('files.openStep', { name: file.name }), before => {
    const opened: Course = {
      ...before,
      // What the file does not state stays as it was asked about, or is usual for its gates.
      ...asUsual(before, of.discipline ?? setDiscipline(gates)),
      ...of,
      ...(category && { category }),
      name: file.name.replace(/\.(csv|tsv|txt)$/i, ''),
      comments: [...comments, ...kept],
      gates,
      demo: false,
    };
    return { ...opened, inFile: courseText(opened) };
  });
  const { length: unread } = problems;
  const read = { name: file.name, gates: t('common.gates', { count: gates.length }) };
  const reported =
    unread > 0 ? t('files.gatesNotRead', { ...read, count: unread }) : t('files.gatesRead', read);
  report(
    unknown ? t('files.unknownCategory', { reported, found: written, categories }) : reported,
    unread > 0 || unknown ? 'error' : 'note',
  );
}

/** `pala-ostrelle-slalom.csv`: what the set is called, and what it is where that does not say so already. */
export function courseFileName({ name, discipline }: Pick<Course, 'name' | 'discipline'>): string {
  const stem = fileStem(name || 'set');
  const kind = STEM[discipline];
  return `${stem.includes('slalom') ? stem : `${stem}-${kind}`}.csv`;
}

export async function saveCourse(): Promise<void> {
  const { name, gates } = course.value;
  const file = courseFileName(course.value);
  const text = courseText(course.value);
  try {
    if (await getHost().exportFile(file, 'text/csv', asCsvFile(text))) {
      markCourseSaved(name, text);
      report(t('files.savedGates', { name: file, gates: t('common.gates', { count: gates.length }) }));
    }
  } catch (error) {
    report(t('common.notSaved', { name: file, why: errorWords(error) }), 'error');
  }
}
