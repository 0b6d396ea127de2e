import type { JSX } from 'preact';
import { t } from '../../state/index.ts';

/** A table asked for, and the name of the one in use. */
export function FileChoice(props: { name: string | undefined; hint: string; onOpen(): void }): JSX.Element {
  return (
    <>
      <p class="reading-hint">{props.hint}</p>
      <p class="file-choice">
        <button type="button" onClick={props.onOpen}>
          {t('slope.openCsv')}
        </button>{' '}
        {props.name ?? t('slope.noFileOpen')}
      </p>
    </>
  );
}
