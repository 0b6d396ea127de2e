import './set.css';
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Discipline } from '../../../core/rules/index.ts';
import { Empty, Segments } from '../../kit/index.ts';
import { RuleCheckPanel } from '../../rules/index.ts';
import { chosenPairs, course } from '../../state/index.ts';
import { AlongSheet } from './along-sheet.tsx';
import { CourseBar, FileProblems } from './course-bar.tsx';
import { EditSheet } from './edit-sheet.tsx';
import { GateDetail } from './gate-detail.tsx';
import { MakeSheet } from './make-sheet.tsx';
import { PairsSheet } from './pairs-sheet.tsx';
import { Plan } from './plan.tsx';
import { type SetSheet, sheet } from './set-state.ts';
import { SettingSheet } from './setting-sheet.tsx';

const SHEETS: readonly { value: SetSheet; label: string }[] = [
  { value: 'pairs', label: 'Pairs' },
  { value: 'gates', label: 'Gate by gate' },
  { value: 'along', label: 'Chart' },
  { value: 'edit', label: 'Gates' },
  { value: 'make', label: 'Make' },
  { value: 'setting', label: 'Setting rules' },
  { value: 'rules', label: 'Rule check' },
];

/** Undefined follows the set; null checks each pair by its own discipline. */
const checkedAs = signal<Discipline | null | undefined>(undefined);

export function SetStage(): JSX.Element {
  const { gates, discipline } = course.value;
  return (
    <div class="stage-column set-stage">
      <CourseBar />
      <FileProblems />
      {gates.length > 0 ? (
        <Plan />
      ) : (
        <Empty>
          <p>
            There are no gates yet. Take the demo gates, make a rhythmic set, or open a list of gates (CSV).
          </p>
        </Empty>
      )}
      <Segments
        label="Under it"
        labelHidden
        value={sheet.value}
        options={SHEETS}
        onInput={value => {
          sheet.value = value;
        }}
      />
      <section
        // Each sheet is read from its head, wherever the one before was scrolled to.
        key={sheet.value}
        class="set-sheet"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={SHEETS.find(each => each.value === sheet.value)!.label}
      >
        {sheet.value === 'pairs' && <PairsSheet />}
        {sheet.value === 'gates' && <GateDetail />}
        {sheet.value === 'along' && <AlongSheet />}
        {sheet.value === 'edit' && <EditSheet />}
        {sheet.value === 'make' && <MakeSheet />}
        {sheet.value === 'setting' && <SettingSheet />}
        {sheet.value === 'rules' && (
          <RuleCheckPanel
            pairs={chosenPairs.value}
            discipline={checkedAs.value === undefined ? discipline : checkedAs.value}
            onDiscipline={next => {
              checkedAs.value = next;
            }}
          />
        )}
      </section>
    </div>
  );
}
