import type { JSX } from 'preact';

/** A table asked for, and the name of the one in use. */
export function FileChoice(props: { name: string | undefined; hint: string; onOpen(): void }): JSX.Element {
  return (
    <>
      <p class="reading-hint">{props.hint}</p>
      <p class="file-choice">
        <button type="button" onClick={props.onOpen}>
          Open CSV…
        </button>{' '}
        {props.name ?? 'no file open'}
      </p>
    </>
  );
}
