import './rules.css';
import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import { type Category, categories, type Discipline } from '../../core/rules/index.ts';
import {
  category,
  checkOf,
  chooseCategory,
  chooseEdition,
  chooseLowerLevel,
  easesLowerLevel,
  edition,
  isOwn,
  knownEditions,
  lowerLevel,
} from '../answers/index.ts';
import { editionProblems, openFiles } from '../files/index.ts';
import type { PairMark } from '../state/index.ts';
import { CheckTable } from './check-table.tsx';

export interface CheckedEntry {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly mark?: PairMark;
  /** Why the pair cannot be edited; absent when it can. */
  readonly readOnly?: string | undefined;
}

const DISCIPLINES: readonly { value: Discipline | 'own'; label: string }[] = [
  { value: 'own', label: 'of each pair' },
  { value: 'SL', label: 'slalom' },
  { value: 'GS', label: 'giant slalom' },
  { value: 'SG', label: 'super-G' },
  { value: 'DH', label: 'downhill' },
];

/**
 * The rule check of any pairs, with its choices of discipline, category and edition.
 *
 *   <RuleCheckPanel pairs={chosenPairs.value} discipline={wanted} onDiscipline={d => …} />
 *
 * `discipline` null checks each pair by its own.
 */
export function RuleCheckPanel(props: {
  readonly pairs: readonly CheckedEntry[];
  readonly discipline: Discipline | null;
  onDiscipline(discipline: Discipline | null): void;
}): JSX.Element {
  const { pairs, discipline } = props;
  const problems = editionProblems.value;
  return (
    <div class="rule-check">
      <div class="rule-choices">
        <Choice
          label="Discipline"
          value={discipline ?? 'own'}
          options={DISCIPLINES}
          onInput={value => props.onDiscipline(value === 'own' ? null : (value as Discipline))}
        />
        <Choice
          label="Category"
          value={category.value}
          options={categories.map(value => ({ value, label: value }))}
          onInput={value => chooseCategory(value as Category)}
        />
        <label class="check-choice" title="Its limits are eased where the edition says so">
          <input
            type="checkbox"
            checked={lowerLevel.value}
            onChange={event => chooseLowerLevel(event.currentTarget.checked)}
          />
          <span>
            Lower-level race
            {!easesLowerLevel.value && <span class="reading-note">not eased by this edition</span>}
          </span>
        </label>
        <button type="button" onClick={() => void openFiles('edition')}>
          Own edition…
        </button>
        <Choice
          label="Edition"
          long
          value={edition.value.edition}
          options={knownEditions.value.map(each => ({
            value: each.edition,
            label: `${each.edition}${isOwn(each) ? ' (your file)' : ''}`,
          }))}
          onInput={chooseEdition}
        />
      </div>
      {problems && (
        <div class="problem" role="alert">
          <p>
            {problems.file} is no edition of limits:
            <button
              type="button"
              class="bare row-link"
              onClick={() => {
                editionProblems.value = null;
              }}
            >
              Close
            </button>
          </p>
          <ul>
            {problems.lines.slice(0, 8).map(line => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {problems.lines.length > 8 && <p>and {problems.lines.length - 8} more.</p>}
        </div>
      )}
      {pairs.map(({ id, name, pair, mark, readOnly }) => (
        <CheckTable
          key={id}
          id={id}
          name={name}
          mark={mark}
          pair={pair}
          readOnly={readOnly}
          check={checkOf(pair, discipline ?? undefined)}
        />
      ))}
      {pairs.length === 0 && (
        <p class="reading-hint">Choose a pair in the rack to check it against limits.</p>
      )}
    </div>
  );
}

function Choice(props: {
  label: string;
  long?: boolean;
  value: string;
  options: readonly { value: string; label: string }[];
  onInput(value: string): void;
}): JSX.Element {
  return (
    <label class={props.long ? 'choice long' : 'choice'}>
      <span>{props.label}</span>
      <select
        value={props.value}
        title={props.long ? props.options.find(each => each.value === props.value)?.label : undefined}
        onChange={event => props.onInput(event.currentTarget.value)}
      >
        {props.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}
