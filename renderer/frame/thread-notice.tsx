import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { retryAll, threadFailure } from '../answers/index.ts';
import { t } from '../state/index.ts';

/** In every view: that what it shows could not be worked out, with another try. */
export function ThreadNotice(): JSX.Element | null {
  const why = threadFailure.value;
  return why === null ? null : <Notice why={why} />;
}

function Notice({ why }: { why: string }): JSX.Element {
  const again = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const going = again.current;
    return () => {
      // It goes when all is well again; the keyboard keeps its place.
      if (going === document.activeElement)
        document.querySelector<HTMLElement>('main, h1[tabindex]')?.focus();
    };
  }, []);
  return (
    <div class="thread-notice" role="alert">
      <p>{t('frame.notWorkedOut', { why })}</p>
      <button ref={again} type="button" onClick={retryAll}>
        {t('frame.tryAgain')}
      </button>
    </div>
  );
}
