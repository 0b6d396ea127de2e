import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { decimal, type MeasureName, parseQuantity, shownAs } from '../../core/units/index.ts';
import { inWords, settle, t, view } from '../state/index.ts';

export interface QuantityProps {
  readonly label: string;
  readonly measure: MeasureName;
  /** Value and limits in the unit the measure holds. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** One key press; Shift moves a tenth of it. Left out, a hundredth of the range. */
  readonly step?: number;
  /** Logarithmic slider, for ranges over several powers of ten. */
  readonly log?: boolean;
  /** Decimals shown in the field instead of the measure's own. */
  readonly decimals?: number;
  /** A word beside the value, for example the snow's name. */
  readonly note?: string;
  readonly disabled?: boolean;
  /** Called on every move; pass the edit a key so that one drag is one undo step. */
  onInput(value: number): void;
}

const POSITIONS = 1000;

/**
 * A number with its label and unit, a slider and an editable field. The field takes units ("2.5 in",
 * "41 mph"); text that cannot be used stays as typed with a message beside it, and the last good value
 * stays in force.
 */
export function Quantity(props: QuantityProps): JSX.Element {
  const { label, measure, value, min, max, log = false } = props;
  const { system } = view.value;
  const shown = shownAs(measure, system);
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const places = props.decimals ?? shown.decimals;
  const inUnit = (held: number) => decimal(held * shown.factor, places);
  const step = props.step ?? (max - min) / 100;

  const toPosition = (held: number) =>
    POSITIONS * (log ? Math.log(held / min) / Math.log(max / min) : (held - min) / (max - min));
  const fromPosition = (position: number) =>
    log ? min * (max / min) ** (position / POSITIONS) : min + (position / POSITIONS) * (max - min);
  const within = (held: number) => Math.min(max, Math.max(min, held));
  /** Whole steps, so that dragging gives numbers a person would type. */
  const tidy = (held: number) =>
    log ? Number(held.toPrecision(2)) : Number((Math.round(held / step) * step).toFixed(9));

  const nudge = (direction: 1 | -1, fine: boolean) => {
    const by = fine ? step / 10 : step;
    props.onInput(
      within(log ? value * (fine ? 1.01 : 1.1) ** direction : Number((value + direction * by).toFixed(9))),
    );
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key] as
      | 1
      | -1
      | undefined;
    if (direction) nudge(direction, event.shiftKey);
    else if (event.key === 'Home') props.onInput(min);
    else if (event.key === 'End') props.onInput(max);
    else return;
    event.preventDefault();
  };

  const read = (text: string) => {
    setDraft(text);
    const parsed = parseQuantity(text, measure, system);
    if (!parsed.ok) {
      setProblem(inWords({ field: label, ...parsed }));
      return;
    }
    const slack = Math.abs(max - min) * 1e-9;
    if (parsed.value < min - slack || parsed.value > max + slack) {
      setProblem(
        t('kit.outOfRange', {
          label,
          found: text.trim(),
          from: inUnit(min),
          to: inUnit(max),
          unit: shown.unit,
        }),
      );
      return;
    }
    setProblem(null);
    props.onInput(parsed.value);
  };
  const leave = () => {
    setDraft(null);
    setProblem(null);
    settle();
  };

  return (
    <div class="quantity" data-invalid={problem ? '' : undefined}>
      <label for={`${id}-field`}>{label}</label>
      <span class="quantity-field">
        <input
          id={`${id}-field`}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={draft ?? inUnit(value)}
          disabled={props.disabled}
          aria-invalid={problem !== null}
          aria-describedby={problem ? `${id}-problem` : undefined}
          onFocus={event => event.currentTarget.select()}
          onInput={event => read(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={event => {
            if (event.key === 'Escape' || event.key === 'Enter') leave();
            if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
              event.preventDefault();
              leave();
              nudge(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
            }
          }}
        />
        <span class="unit" aria-hidden="true">
          {shown.unit}
        </span>
      </span>
      <input
        class="slider"
        type="range"
        min={0}
        max={POSITIONS}
        step="any"
        value={toPosition(within(value))}
        disabled={props.disabled}
        aria-label={label}
        aria-valuetext={`${inUnit(value)} ${shown.unit}${props.note ? `, ${props.note}` : ''}`}
        style={{ '--filled': `${(toPosition(within(value)) / POSITIONS) * 100}%` }}
        onInput={event => props.onInput(within(tidy(fromPosition(Number(event.currentTarget.value)))))}
        onChange={settle}
        onKeyDown={onKeyDown}
        onBlur={settle}
      />
      {props.note && <span class="quantity-note">{props.note}</span>}
      {problem && (
        <p class="problem" id={`${id}-problem`} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
