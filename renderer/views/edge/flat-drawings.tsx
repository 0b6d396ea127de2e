import type { JSX } from 'preact';
import type { ChosenPair } from '../../state/index.ts';
import { FromAbove } from './from-above.tsx';
import { SeenAlong } from './seen-along.tsx';

/** The ski in the snow without depth: along its length, and from above. */
export function FlatDrawings(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
}): JSX.Element {
  return (
    <>
      <SeenAlong pair={props.active} />
      <FromAbove pairs={props.pairs} active={props.active} />
    </>
  );
}
