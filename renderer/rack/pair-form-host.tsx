import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { addEntries, choose, edit, joinsRackFile, letterFree, newId, project, t } from '../state/index.ts';
import { startingPair } from './new-pair.ts';
import { PairForm } from './pair-form.tsx';

const editing = signal<string | null>(null);

/** Opens the form on a pair of the rack. */
export function editPair(id: string): void {
  editing.value = id;
}

/** A new pair in the rack, chosen if a letter is free, with its form open. */
export function newPair(): void {
  const id = newId();
  edit(t('rack.newPair'), now => {
    const grown = addEntries([{ id, pair: startingPair(), saved: null, inRackFile: joinsRackFile(now) }])(
      now,
    );
    return letterFree(grown) ? choose(id)(grown) : grown;
  });
  editing.value = id;
}

/** Shows the form while a pair is being edited. The frame holds one. */
export function PairFormHost(): JSX.Element | null {
  const entry = project.value.rack.find(each => each.id === editing.value);
  if (!entry) return null;
  return (
    <PairForm
      key={entry.id}
      entry={entry}
      onClose={() => {
        editing.value = null;
      }}
    />
  );
}
