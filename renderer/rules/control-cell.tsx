import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import { shownAs } from '../../core/units/index.ts';
import { NumberCell } from '../kit/index.ts';
import { changePair, t, view } from '../state/index.ts';

/** The pair that is being measured, and what is wrong with the number typed last. */
export interface Measured {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly readOnly?: string | undefined;
  readonly problem: { readonly field: string; readonly text: string } | null;
  tell(problem: Measured['problem']): void;
}

interface Props {
  readonly of: Measured;
  readonly field: string;
  readonly label: string;
  /** Held in mm, as the range is; shown in the chosen system. */
  readonly value: number | undefined;
  readonly range: readonly [least: number, most: number];
  /** Which of the readings of a field; one undo step takes back what was typed into one cell. */
  readonly nth?: number;
  put(value: number | undefined): Partial<Pair>;
}

/** One number of the control measurement, which goes into the pair as it is typed. */
export function ControlCell({ of, field, label, value, range, nth = 0, put }: Props): JSX.Element {
  const { system } = view.value;
  const { unit, factor } = shownAs('widthMm', system);
  const decimals = system === 'metric' ? 1 : 3;
  const steps = 10 ** decimals;
  const change = (mm: number | undefined) =>
    changePair(of.id, t('rules.cellStep', { label, name: of.name }), put(mm), `${field} ${nth} ${of.id}`);
  return (
    <NumberCell
      label={label}
      unit={unit}
      value={value === undefined ? null : Number((value * factor).toFixed(decimals))}
      // Rounded inwards, so that what is accepted in inches is accepted by the pair too.
      min={Math.ceil(range[0] * factor * steps - 1e-6) / steps}
      max={Math.floor(range[1] * factor * steps + 1e-6) / steps}
      disabled={of.readOnly !== undefined}
      onProblem={text => of.tell(text === null ? null : { field, text })}
      onClear={() => change(undefined)}
      onInput={shown => change(Number((shown / factor).toFixed(3)))}
    />
  );
}

/** Where a number is measured, or what is wrong with it, under its name: the cells beside it may be three. */
export function Where(props: { of: Measured; field: string; text: string }): JSX.Element {
  const { problem } = props.of;
  return (
    <span class="where">
      {problem?.field === props.field ? (
        <span class="problem" role="alert">
          {problem.text}
        </span>
      ) : (
        props.text
      )}
    </span>
  );
}
