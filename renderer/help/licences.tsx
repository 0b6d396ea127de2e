import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { t } from '../state/index.ts';

/** Put beside the page when it is built. */
const NOTICES = './third-party-notices.txt';

type Notices = { readonly text: string } | { readonly failed: true } | null;
const notices = signal<Notices>(null);

async function load(): Promise<void> {
  try {
    const response = await fetch(NOTICES);
    notices.value = response.ok ? { text: await response.text() } : { failed: true };
  } catch {
    notices.value = { failed: true };
  }
}

/** Whose work is in the program, under which licences; read only once somebody looks. */
export function Licences(): JSX.Element {
  const read = notices.value;
  return (
    <details
      class="licences"
      onToggle={event => {
        if (event.currentTarget.open && !(read && 'text' in read)) void load();
      }}
    >
      <summary>{t('help.licences')}</summary>
      {read === null ? null : 'text' in read ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
        <pre tabIndex={0}>{read.text}</pre>
      ) : (
        <p>
          {t('help.licencesUnread')}{' '}
          <button type="button" onClick={() => void load()}>
            {t('frame.tryAgain')}
          </button>
        </p>
      )}
    </details>
  );
}
