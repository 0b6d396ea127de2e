import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { Dialog } from '../kit/index.ts';
import { t } from '../state/index.ts';
import { CAUTIONS, LIMITS } from './cautions.ts';
import { controlKeys, type KeyGroup } from './keys.ts';
import { Licences } from './licences.tsx';

export const helpOpen = signal(false);
export const aboutOpen = signal(false);

/** Keys of the actions, as the frame has them, and of the controls. */
export function HelpPanel({ actions }: { readonly actions: readonly KeyGroup[] }): JSX.Element {
  return (
    <Dialog
      title={t('help.title')}
      onClose={() => {
        helpOpen.value = false;
      }}
    >
      {[...actions, ...controlKeys()].map(group => (
        <section class="key-group" key={group.title}>
          <h3>{t(group.title)}</h3>
          <dl>
            {group.keys.map(([key, meaning]) => (
              <div key={key}>
                <dt>
                  <kbd>{key}</kbd>
                </dt>
                <dd>{t(meaning)}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Dialog>
  );
}

export function AboutModel(): JSX.Element {
  return (
    <Dialog
      title={t('help.aboutModel')}
      onClose={() => {
        aboutOpen.value = false;
      }}
    >
      <section class="about">
        <h3>{t('common.cautions')}</h3>
        <ul>
          {CAUTIONS.map(caution => (
            <li key={caution}>{t(caution)}</li>
          ))}
        </ul>
        <h3>{t('help.limitsOfModel')}</h3>
        <ul>
          {LIMITS.map(caution => (
            <li key={caution}>{t(caution)}</li>
          ))}
        </ul>
        <h3>{t('help.whereFrom')}</h3>
        <p>{t('help.whereFromText')}</p>
        <Licences />
      </section>
    </Dialog>
  );
}
