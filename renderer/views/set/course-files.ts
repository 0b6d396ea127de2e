import { signal } from '@preact/signals';
import { type GateProblem, readGates, rhythmicSet, writeGates } from '../../../core/course/index.ts';
import { demoConditions, demoSets } from '../../demo/sets/index.ts';
import { getHost } from '../../host/index.ts';
import { fileStem } from '../../rack/files.ts';
import { type Course, changeCourse, conditions, course, edit, report } from '../../state/index.ts';

/** What could not be read of the file opened last, row by row. */
export const fileProblems = signal<{
  readonly file: string;
  readonly read: number;
  readonly problems: readonly GateProblem[];
} | null>(null);

/** Gates further apart than this are no slalom gates, m (only a first guess; the choice stays open). */
const SLALOM_SPACING = 15;

function disciplineOf(gates: Course['gates']): Course['discipline'] {
  // The middle one, so that a row that could not be read does not count.
  const spacings = gates.slice(1).map((gate, i) => gate.y - gates[i].y);
  const middle = spacings.sort((a, b) => a - b)[Math.floor(spacings.length / 2)] ?? 0;
  return middle > SLALOM_SPACING ? 'GS' : 'SL';
}

/** The invented set of a discipline, on its own slope and at its speed, as one undo step. */
export function takeDemo(discipline: Course['discipline']): void {
  fileProblems.value = null;
  edit(`Demo set, ${discipline === 'SL' ? 'slalom' : 'giant slalom'}`, before => ({
    ...before,
    course: demoSets[discipline],
    conditions: { ...before.conditions, ...demoConditions[discipline] },
  }));
}

/** Puts the gates of a file in place of the present ones; rows at fault are kept to be told. */
export function takeCourse(file: { readonly name: string; readonly text: string }): void {
  const { gates, problems } = readGates(file.text);
  fileProblems.value = problems.length > 0 ? { file: file.name, read: gates.length, problems } : null;
  if (gates.length === 0) {
    report(`${file.name}: no gates found; the set stays as it is`, 'error');
    return;
  }
  changeCourse(`Open ${file.name}`, () => ({
    name: file.name.replace(/\.csv$/i, ''),
    discipline: disciplineOf(gates),
    gates,
    demo: false,
  }));
  report(
    `${file.name}: ${gates.length} gates${problems.length > 0 ? `, ${problems.length} rows not read` : ''}`,
    problems.length > 0 ? 'error' : 'note',
  );
}

export async function openCourse(): Promise<void> {
  try {
    const [file] = await getHost().open('course');
    if (file) takeCourse(file);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}

export async function saveCourse(): Promise<void> {
  const { name, gates } = course.value;
  const file = `${fileStem(name || 'set')}.csv`;
  try {
    if (await getHost().exportFile(file, 'text/csv', writeGates(gates))) report(`${file} saved`);
  } catch (error) {
    report(`${file} could not be saved: ${(error as Error).message}`, 'error');
  }
}

/** The rhythmic set as its sliders say. */
export function makeRhythmic(): void {
  const { gates, gateSpacingM, gateOffsetM } = conditions.value;
  const made = rhythmicSet(Math.round(gates), gateSpacingM, gateOffsetM);
  fileProblems.value = null;
  changeCourse('Make a rhythmic set', () => ({
    name: 'Rhythmic set',
    discipline: disciplineOf(made),
    gates: made,
    demo: false,
  }));
}
