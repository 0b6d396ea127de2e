import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { importFile } from '../files/index.ts';
import { getHost, type RecentFile } from '../host/index.ts';
import { Dialog } from '../kit/index.ts';
import { errorWords, report, t } from '../state/index.ts';
import { Message } from './message.tsx';

interface Shown {
  readonly files: readonly RecentFile[];
  /** Why the file pressed last could not be opened. */
  readonly failed?: { readonly token: string; readonly message: string };
}

const shown = signal<Shown | null>(null);

/** Shows the files opened or saved lately. */
export async function showRecent(): Promise<void> {
  try {
    shown.value = { files: await getHost().recent() };
  } catch (error) {
    report(t('rack.recentNotListed', { why: errorWords(error) }), 'error');
  }
}

/** The files opened or saved lately, latest first; one that is gone says so and stays for another try. */
export function RecentList(): JSX.Element | null {
  if (!shown.value) return null;
  const { files, failed } = shown.value;
  const open = async (token: string, dialog: HTMLDialogElement | null) => {
    try {
      const file = await getHost().reopen(token);
      dialog?.close();
      importFile(file);
    } catch (error) {
      shown.value = { files, failed: { token, message: errorWords(error) } };
    }
  };
  return (
    <Dialog
      title={t('rack.openRecent')}
      onClose={() => {
        shown.value = null;
      }}
    >
      {files.length === 0 ? (
        <p>{t('rack.noRecent')}</p>
      ) : (
        <ul class="recent">
          {files.map(({ token, name, folder }, at) => (
            <li key={token}>
              <button
                type="button"
                class="bare"
                autofocus={at === 0}
                onClick={event => void open(token, event.currentTarget.closest('dialog'))}
              >
                <span>{name}</span>
                {folder && <span class="soft">{folder}</span>}
              </button>
              {failed?.token === token && <Message text={failed.message} />}
            </li>
          ))}
        </ul>
      )}
      {getHost().kind === 'browser' && files.length > 0 && <p class="soft">{t('rack.recentCopies')}</p>}
    </Dialog>
  );
}
