import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { getHost } from '../host/index.ts';
import { Dialog } from '../kit/index.ts';
import { dismiss, edit, errorWords, project, report, type SetAside, t } from '../state/index.ts';

const open = signal(false);

/** Says in the rack that parts of the last work were set aside; it stays until the list is empty. */
export function SetAsideNote(): JSX.Element | null {
  const { length } = project.value.unreadable;
  if (length === 0) return null;
  return (
    <p class="problem rack-aside">
      {t('rack.partsNotRestored', { count: length })}{' '}
      <button
        type="button"
        class="bare link"
        onClick={() => {
          open.value = true;
        }}
      >
        {t('rack.seeKept')}
      </button>
    </p>
  );
}

/** What was set aside, why, and as which file it can be saved. */
export function SetAsideList(): JSX.Element | null {
  if (!open.value) return null;
  const { unreadable } = project.value;
  return (
    <Dialog
      title={t('rack.keptTitle')}
      onClose={() => {
        open.value = false;
      }}
    >
      <div class="rack-question">
        {unreadable.length === 0 ? <p>{t('rack.keptNone')}</p> : <p>{t('rack.keptHint')}</p>}
        <ul class="aside-list">
          {unreadable.map(each => (
            <li key={each.id}>
              <strong>{each.name}</strong>
              <p class="soft">{t('rack.notRestored', { why: each.why })}</p>
              <button
                type="button"
                aria-label={t('rack.saveNamedAsFile', { name: each.name })}
                onClick={() => void save(each)}
              >
                {t('rack.saveAsFile')}
              </button>{' '}
              <button
                type="button"
                class="quiet"
                aria-label={t('rack.dismissNamed', { name: each.name })}
                onClick={() => edit(t('rack.dismissStep', { name: each.name }), dismiss(each.id))}
              >
                {t('rack.dismiss')}
              </button>
            </li>
          ))}
        </ul>
      </div>
    </Dialog>
  );
}

async function save({ name, fileName, text }: SetAside): Promise<void> {
  try {
    if (await getHost().exportFile(fileName, 'application/json', text))
      report(t('common.savedTo', { name, file: fileName }));
  } catch (error) {
    report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
  }
}
