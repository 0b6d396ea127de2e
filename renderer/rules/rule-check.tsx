import './rules.css';
import type { JSX } from 'preact';
import type { PlainKey } from '../../core/language/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import { type Category, categories, type Discipline, editionText } from '../../core/rules/index.ts';
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
import { inWords, type PairMark, t } from '../state/index.ts';
import { CheckTable } from './check-table.tsx';

export interface CheckedEntry {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly mark?: PairMark;
  /** Why the pair cannot be edited; absent when it can. */
  readonly readOnly?: string | undefined;
}

const DISCIPLINES: readonly { value: Discipline | 'own'; label: PlainKey }[] = [
  { value: 'own', label: 'rules.ofEachPair' },
  { value: 'SL', label: 'discipline.SL' },
  { value: 'GS', label: 'discipline.GS' },
  { value: 'SG', label: 'discipline.SG' },
  { value: 'DH', label: 'discipline.DH' },
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
          label={t('common.discipline')}
          value={discipline ?? 'own'}
          options={DISCIPLINES.map(({ value, label }) => ({ value, label: t(label) }))}
          onInput={value => props.onDiscipline(value === 'own' ? null : (value as Discipline))}
        />
        <Choice
          label={t('rules.category')}
          value={category.value}
          options={categories.map(value => ({ value, label: t(`category.${value}`) }))}
          onInput={value => chooseCategory(value as Category)}
        />
        <label class="check-choice" title={t('rules.lowerLevelHint')}>
          <input
            type="checkbox"
            checked={lowerLevel.value}
            onChange={event => chooseLowerLevel(event.currentTarget.checked)}
          />
          <span>
            {t('rules.lowerLevel')}
            {!easesLowerLevel.value && <span class="reading-note">{t('rules.notEased')}</span>}
          </span>
        </label>
        <button type="button" onClick={() => void openFiles('edition')}>
          {t('rules.ownEdition')}
        </button>
        <Choice
          label={t('rules.edition')}
          long
          value={edition.value.edition}
          options={knownEditions.value.map(each => ({
            value: each.edition,
            label: isOwn(each)
              ? t('rules.yourFile', { edition: each.edition })
              : inWords(editionText(each.edition)),
          }))}
          onInput={chooseEdition}
        />
      </div>
      {problems && (
        <div class="problem" role="alert">
          <p>
            {t('rules.noEdition', { file: problems.file })}{' '}
            <button
              type="button"
              class="bare row-link"
              onClick={() => {
                editionProblems.value = null;
              }}
            >
              {t('common.close')}
            </button>
          </p>
          <ul>
            {problems.lines.slice(0, 8).map(line => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {problems.lines.length > 8 && <p>{t('common.andMore', { count: problems.lines.length - 8 })}</p>}
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
      {pairs.length === 0 && <p class="reading-hint">{t('rules.choosePair')}</p>}
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
