import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { Dialog } from '../kit/index.ts';
import { CAUTIONS, LIMITS } from './cautions.ts';
import { KEYS } from './keys.ts';
import { Licences } from './licences.tsx';

export const helpOpen = signal(false);
export const aboutOpen = signal(false);

export function HelpPanel(): JSX.Element {
  return (
    <Dialog
      title="Keys and help"
      onClose={() => {
        helpOpen.value = false;
      }}
    >
      {KEYS.map(group => (
        <section class="key-group" key={group.title}>
          <h3>{group.title}</h3>
          <dl>
            {group.keys.map(([key, meaning]) => (
              <div key={key}>
                <dt>
                  <kbd>{key}</kbd>
                </dt>
                <dd>{meaning}</dd>
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
      title="About the model"
      onClose={() => {
        aboutOpen.value = false;
      }}
    >
      <section class="about">
        <h3>Cautions</h3>
        <ul>
          {CAUTIONS.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <h3>Limits of the model</h3>
        <ul>
          {LIMITS.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <h3>Where numbers come from</h3>
        <p>
          Every reading with “how?” opens its working: the formula, the numbers put in, and the source with
          how well it is established. “From memory” means: confirm before relying on it.
        </p>
        <Licences />
      </section>
    </Dialog>
  );
}
