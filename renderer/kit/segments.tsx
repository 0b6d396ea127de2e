import type { ComponentChildren, JSX } from 'preact';
import { useId } from 'preact/hooks';
import type { PlainKey } from '../../core/language/index.ts';
import { t } from '../state/index.ts';

/** Options whose label and title are said by key. */
export const worded = <T,>(
  options: readonly { readonly value: T; readonly label: PlainKey; readonly title?: PlainKey }[],
): { readonly value: T; readonly label: string; readonly title?: string }[] =>
  options.map(({ value, label, title }) => ({ value, label: t(label), ...(title && { title: t(title) }) }));

/** One choice out of a few, side by side. A radio group: arrow keys move the choice. */
export function Segments<T extends string | number>(props: {
  readonly label: string;
  /** The label is always said; printed unless hidden. */
  readonly labelHidden?: boolean;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string; readonly title?: string }[];
  onInput(value: T): void;
}): JSX.Element {
  const name = useId();
  return (
    <fieldset class="segments">
      <legend class={props.labelHidden ? 'sr-only' : undefined}>{props.label}</legend>
      <span class="segments-row">
        {props.options.map(option => (
          <label key={option.value} title={option.title}>
            <input
              type="radio"
              name={name}
              checked={option.value === props.value}
              onChange={() => props.onInput(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </span>
    </fieldset>
  );
}

/** A row of controls over or under a drawing. */
export function Toolbar(props: {
  readonly label: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="toolbar" role="group" aria-label={props.label}>
      {props.children}
    </div>
  );
}
