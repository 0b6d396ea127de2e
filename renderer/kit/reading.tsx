import type { ComponentChildren, JSX } from 'preact';
import { formatQuantity, type MeasureName } from '../../core/units/index.ts';
import type { Working } from '../../core/working/index.ts';
import { type PairMark, t, view } from '../state/index.ts';
import { PairBadge } from './pair-badge.tsx';
import { showWorking } from './working-panel.tsx';

export interface ReadingProps {
  readonly label: string;
  readonly measure: MeasureName;
  /** In the unit the measure holds; null when it cannot be said, with `why`. */
  readonly value: number | null;
  readonly uncertainty?: number;
  readonly decimals?: number;
  /** Whose reading it is, where several pairs are read. */
  readonly mark?: PairMark;
  /** Name of the pair, read beside the mark. */
  readonly of?: string;
  /** What is missing, and what to do. */
  readonly why?: string;
  /** One line under the figure. */
  readonly note?: ComponentChildren;
  readonly size?: 'large' | 'small';
  /** Explains the number: one working, or several in the order they build on each other. */
  readonly working?: () => Working | readonly Working[];
}

/** A number to be read across a room. With a `working` it is a button: click or Enter asks "how?". */
export function Reading(props: ReadingProps): JSX.Element {
  const { value, size = 'large' } = props;
  const formatted =
    value === null
      ? null
      : formatQuantity(value, props.measure, {
          system: view.value.system,
          uncertainty: props.uncertainty,
          decimals: props.decimals,
        });
  const content = (
    <>
      <span class="reading-label">
        {props.mark && <PairBadge mark={props.mark} />}
        {props.of ? (
          <>
            <span class="sr-only">{props.label}</span>
            <span class="reading-of">{props.of}</span>
          </>
        ) : (
          props.label
        )}
      </span>
      {formatted ? (
        <span class="reading-value">
          <span class="figure-value">{formatted.value}</span>
          {formatted.unit && (
            <span class={formatted.unit === '°' ? 'unit degree' : 'unit'}>{formatted.unit}</span>
          )}
          {formatted.plusMinus && <span class="plus-minus">± {formatted.plusMinus}</span>}
        </span>
      ) : (
        <span class="reading-why">{props.why ?? t('kit.notKnown')}</span>
      )}
      {props.note && <span class="reading-note">{props.note}</span>}
    </>
  );
  const { working } = props;
  if (!working || value === null) return <div class={`reading ${size}`}>{content}</div>;
  return (
    <button
      type="button"
      class={`reading ${size}`}
      onClick={() =>
        showWorking(props.of ? t('common.of', { what: props.label, name: props.of }) : props.label, working())
      }
    >
      {content}
      <span class="how">{t('kit.how')}</span>
    </button>
  );
}

export interface PairReadingRow extends Omit<ReadingProps, 'label' | 'measure' | 'size'> {
  readonly id: string;
}

/** One quantity pair by pair: the active pair large, the others small beneath it. */
export function PairReadings(props: {
  readonly label: string;
  readonly measure: MeasureName;
  readonly activeId: string | null;
  readonly rows: readonly PairReadingRow[];
}): JSX.Element {
  const first = props.rows.find(row => row.id === props.activeId) ?? props.rows[0];
  const rest = props.rows.filter(row => row !== first);
  return (
    <section class="pair-readings">
      <h2>{props.label}</h2>
      {first && <Reading {...first} label={props.label} measure={props.measure} size="large" />}
      {rest.map(row => (
        <Reading key={row.id} {...row} label={props.label} measure={props.measure} size="small" />
      ))}
    </section>
  );
}
