import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { readIn } from '../../core/units/index.ts';
import { inWords, settle, t } from '../state/index.ts';

/**
 * A number in a table, in `unit`; another unit of the same quantity may be typed with it ("0.5 cm" in a cell of
 * mm). What cannot be used stays as typed, marked and explained; the last good value holds.
 * With `onClear` the cell may be emptied and then stands for a value that is not given.
 */
export function NumberCell(props: {
  readonly label: string;
  readonly value: number | null;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  /** Decimals always shown, so that a column lines up; more where the value has them. */
  readonly decimals?: number;
  readonly disabled?: boolean;
  onInput(value: number): void;
  onClear?(): void;
  onProblem(problem: string | null): void;
}): JSX.Element {
  const [draft, setDraft] = useState<string | null>(null);
  const [bad, setBad] = useState(false);
  const say = (problem: string | null) => {
    setBad(problem !== null);
    props.onProblem(problem);
  };
  const read = (text: string) => {
    setDraft(text);
    if (props.onClear && text.trim() === '') {
      say(null);
      props.onClear();
      return;
    }
    const parsed = readIn(text, props.unit);
    if (!parsed.ok) say(inWords({ field: props.label, ...parsed }));
    else if (parsed.value < props.min || parsed.value > props.max)
      say(
        t('kit.outOfRange', {
          label: props.label,
          found: text.trim(),
          from: props.min,
          to: props.max,
          unit: props.unit,
        }),
      );
    else {
      say(null);
      props.onInput(parsed.value);
    }
  };
  const leave = () => {
    setDraft(null);
    say(null);
    settle();
  };
  return (
    <input
      class="number-cell"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={`${props.label}${props.unit ? `, ${props.unit}` : ''}`}
      aria-invalid={bad}
      placeholder={props.onClear && t('common.notGiven')}
      value={draft ?? (props.value === null ? '' : cellText(props.value, props.decimals))}
      disabled={props.disabled}
      onFocus={event => event.currentTarget.select()}
      onInput={event => read(event.currentTarget.value)}
      onBlur={leave}
      onKeyDown={event => {
        if (event.key === 'Enter' || event.key === 'Escape') leave();
      }}
    />
  );
}

function cellText(value: number, decimals = 0): string {
  const plain = String(Number(value.toPrecision(6)));
  const fixed = value.toFixed(decimals);
  return Number(fixed) === Number(plain) ? fixed : plain;
}
