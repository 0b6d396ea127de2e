import type { JSX } from 'preact';
import { fileProblems, openFiles, saveCourse } from '../../files/index.ts';
import { Segments, Toolbar } from '../../kit/index.ts';
import { type Course, changeCourse, course, inWords } from '../../state/index.ts';
import { takeDemo } from './course-sources.ts';
import { gateCount } from './gate-words.ts';
import { sheet } from './set-state.ts';

/** Which set it is, and where gates come from. */
export function CourseBar(): JSX.Element {
  const { discipline, gates, demo } = course.value;
  return (
    <Toolbar label="The set">
      <Segments
        label="Discipline"
        labelHidden
        value={discipline}
        options={[
          { value: 'SL', label: 'Slalom' },
          { value: 'GS', label: 'Giant slalom' },
        ]}
        onInput={value => {
          const next = value as Course['discipline'];
          // Untouched demo gates go with their discipline; gates of one's own stay.
          if (demo) takeDemo(next);
          else changeCourse('Discipline of the set', before => ({ ...before, discipline: next }));
        }}
      />
      <span class="course-sources">
        <button type="button" onClick={() => takeDemo(discipline)}>
          Demo gates
        </button>
        <button
          type="button"
          onClick={() => {
            sheet.value = 'make';
          }}
        >
          Make…
        </button>
        <button type="button" onClick={() => void openFiles('gates')}>
          Open…
        </button>
        <button type="button" disabled={gates.length === 0} onClick={saveCourse}>
          Save…
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
    <section class="problem file-problems" aria-label="Rows that were not read">
      <p>
        {found.file}: {gateCount(found.read)} read, {found.problems.length}{' '}
        {found.problems.length === 1 ? 'entry' : 'entries'} not. Saving the set keeps{' '}
        {found.problems.length === 1 ? 'it' : 'them'} in the file as lines that start with #.
        <button
          type="button"
          class="bare row-link"
          onClick={() => {
            fileProblems.value = null;
          }}
        >
          Close
        </button>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <ul tabIndex={0} aria-label="Rows">
        {found.problems.map(({ row, raw, ...fault }) => (
          <li key={`${row} ${fault.field}`}>
            {inWords({ ...fault, where: { row } })} <code>{raw.slice(0, 80)}</code>
          </li>
        ))}
      </ul>
    </section>
  );
}
