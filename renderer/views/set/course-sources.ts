import { rhythmicSet, setDiscipline } from '../../../core/course/index.ts';
import { demoSets } from '../../demo/index.ts';
import { fileProblems } from '../../files/index.ts';
import { asUsual, type Course, changeCourse, conditions, t } from '../../state/index.ts';

/** The invented set of a discipline, on its own slope and at its speed, as one undo step. */
export function takeDemo(discipline: Course['discipline']): void {
  fileProblems.value = null;
  changeCourse(t('set.demoStep', { discipline: { key: `discipline.${discipline}` } }), ({ category }) => ({
    ...demoSets[discipline],
    // Who races does not change with the gates.
    category,
  }));
}

/** The rhythmic set as its sliders say, on the slope and at the speed asked about, or usual for them. */
export function makeRhythmic(): void {
  const { gates, gateSpacingM, gateOffsetM } = conditions.value;
  const made = rhythmicSet(Math.round(gates), gateSpacingM, gateOffsetM);
  fileProblems.value = null;
  changeCourse(t('set.makeStep'), before => ({
    ...before,
    ...asUsual(before, setDiscipline(made)),
    name: t('set.rhythmicName', {
      spacing: Number(gateSpacingM.toFixed(2)),
      offset: Number(gateOffsetM.toFixed(2)),
    }),
    gates: made,
    demo: false,
    inFile: null,
    comments: [],
  }));
}
