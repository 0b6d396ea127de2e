import type { JSX } from 'preact';
import { fileProblems, openFiles, saveCourse } from '../../files/index.ts';
import { Segments, Toolbar } from '../../kit/index.ts';
import { type Course, changeCourse, course, inWords, t } from '../../state/index.ts';
import { takeDemo } from './course-sources.ts';
import { sheet } from './set-state.ts';

/** Which set it is, and where gates come from. */
export function CourseBar(): JSX.Element {
  const { discipline, gates, demo } = course.value;
  return (
    <Toolbar label={t('set.theSet')}>
      <Segments
        label={t('setting.discipline')}
        labelHidden
        value={discipline}
        options={[
          { value: 'SL', label: t('set.slalom') },
          { value: 'GS', label: t('set.giantSlalom') },
        ]}
        onInput={value => {
          const next = value as Course['discipline'];
          // Untouched demo gates go with their discipline; gates of one's own stay.
          if (demo) takeDemo(next);
          else changeCourse(t('set.disciplineStep'), before => ({ ...before, discipline: next }));
        }}
      />
      <span class="course-sources">
        <button type="button" onClick={() => takeDemo(discipline)}>
          {t('set.demoGates')}
        </button>
        <button
          type="button"
          onClick={() => {
            sheet.value = 'make';
          }}
        >
          {t('set.make')}
        </button>
        <button type="button" onClick={() => void openFiles('gates')}>
          {t('set.open')}
        </button>
        <button type="button" disabled={gates.length === 0} onClick={saveCourse}>
          {t('set.save')}
        </button>
      </span>
    </Toolbar>
  );
}

/** The rows of a file that are no gates, each with what was found and what is accepted. */
export function FileProblems(): JSX.Element | null {
  const found = fileProblems.value;
  if (!found) return null;
  return (
    <section class="problem file-problems" aria-label={t('set.rowsNotRead')}>
      <p>
        {t('set.fileProblems', {
          file: found.file,
          gates: t('common.gates', { count: found.read }),
          count: found.problems.length,
        })}
        <button
          type="button"
          class="bare row-link"
          onClick={() => {
            fileProblems.value = null;
          }}
        >
          {t('set.close')}
        </button>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <ul tabIndex={0} aria-label={t('set.rows')}>
        {found.problems.map(({ row, raw, ...fault }) => (
          <li key={`${row} ${fault.field}`}>
            {inWords({ ...fault, where: { row } })} <code>{raw.slice(0, 80)}</code>
          </li>
        ))}
      </ul>
    </section>
  );
}
