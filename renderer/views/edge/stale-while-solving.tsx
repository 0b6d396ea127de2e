import type { ComponentChildren, JSX } from 'preact';
import { grooves } from '../../answers/index.ts';

/** Marks what is in it as the answer of a moment ago while a newer one is being made. */
export function StaleWhileSolving(props: {
  readonly class: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return <div class={grooves.value.running ? `${props.class} stale` : props.class}>{props.children}</div>;
}
