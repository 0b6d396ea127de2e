import './set.css';
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Discipline } from '../../../core/rules/index.ts';
import { Empty, Segments } from '../../kit/index.ts';
import { RuleCheckPanel } from '../../rules/index.ts';
import { chosenPairs, course, t } from '../../state/index.ts';
import { AlongSheet } from './along-sheet.tsx';
import { CourseBar, FileProblems } from './course-bar.tsx';
import { EditSheet } from './edit-sheet.tsx';
import { GateTable } from './gate-table.tsx';
import { MakeSheet } from './make-sheet.tsx';
import { PairsSheet } from './pairs-sheet.tsx';
import { Plan } from './plan.tsx';
import { type SetSheet, sheet } from './set-state.ts';
import { SettingSheet } from './setting-sheet.tsx';
import { WorthSheet } from './worth-sheet.tsx';

const SHEETS: readonly SetSheet[] = ['pairs', 'worth', 'gates', 'along', 'edit', 'make', 'setting', 'rules'];

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
          <p>{t('set.noGates')}</p>
        </Empty>
      )}
      <Segments
        label={t('set.panel')}
        labelHidden
        value={sheet.value}
        options={SHEETS.map(value => ({ value, label: t(`set.sheet.${value}`) }))}
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
        aria-label={t(`set.sheet.${sheet.value}`)}
      >
        {sheet.value === 'pairs' && <PairsSheet />}
        {sheet.value === 'worth' && <WorthSheet />}
        {sheet.value === 'gates' && <GateTable />}
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
