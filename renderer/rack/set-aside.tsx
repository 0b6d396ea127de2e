import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { getHost } from '../host/index.ts';
import { Dialog } from '../kit/index.ts';
import { edit, project, report, type SetAside, takeOff } from '../state/index.ts';

const open = signal(false);

/** Says in the rack that parts of the last work were set aside; it stays until the list is empty. */
export function SetAsideNote(): JSX.Element | null {
  const { length } = project.value.setAside;
  if (length === 0) return null;
  return (
    <p class="problem rack-aside">
      {length === 1 ? 'One part' : `${length} parts`} of your last work could not be taken up again.{' '}
      <button
        type="button"
        class="bare link"
        onClick={() => {
          open.value = true;
        }}
      >
        See what is kept…
      </button>
    </p>
  );
}

/** What was set aside, why, and as which file it can be saved. */
export function SetAsideList(): JSX.Element | null {
  if (!open.value) return null;
  const { setAside } = project.value;
  return (
    <Dialog
      title="Kept from your last work"
      onClose={() => {
        open.value = false;
      }}
    >
      <div class="rack-question">
        {setAside.length === 0 ? (
          <p>Nothing is left on this list. Undo brings back what was taken off it.</p>
        ) : (
          <p>
            This version of the program cannot read these. They are kept as they were, from start to start,
            until you take them off this list.
          </p>
        )}
        <ul class="aside-list">
          {setAside.map(each => (
            <li key={each.id}>
              <strong>{each.name}</strong>
              <p class="soft">Not taken up: {each.why}.</p>
              <button
                type="button"
                aria-label={`Save as a file… ${each.name}`}
                onClick={() => void save(each)}
              >
                Save as a file…
              </button>{' '}
              <button
                type="button"
                class="quiet"
                aria-label={`Take off the list: ${each.name}`}
                onClick={() => edit(`Take ${each.name} off the list`, takeOff(each.id))}
              >
                Take off the list
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
      report(`${name} saved to ${fileName}`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}
