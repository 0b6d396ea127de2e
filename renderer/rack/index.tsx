import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { project, rackFileUnsaved } from '../state/index.ts';
import { comparisons, show } from './comparisons.ts';
import { openFiles, saveRack } from './files.ts';
import { newPair } from './pair-form-host.tsx';
import { RackRow } from './rack-row.tsx';

/** The loaded pairs: find, choose up to four, edit, save; and comparisons that are one click away. */
export function RackPanel(): JSX.Element {
  const wanted = useSignal('');
  const { rack, rackFile } = project.value;
  const words = wanted.value.toLowerCase().split(/\s+/).filter(Boolean);
  const found = rack.filter(({ pair }) => {
    const text = `${pair.name} ${pair.discipline ?? ''} ${pair.lengthMm / 10}`.toLowerCase();
    return words.every(word => text.includes(word));
  });
  return (
    <section class="rack" id="rack" aria-label="Rack" tabIndex={-1}>
      <header class="rack-head">
        <h2>Rack</h2>
        <button type="button" class="quiet" onClick={newPair}>
          New pair
        </button>
      </header>
      <input
        id="rack-search"
        class="rack-search"
        type="search"
        placeholder={`Find among ${rack.length}`}
        aria-label="Find a pair by name, discipline or length"
        value={wanted.value}
        onInput={event => {
          wanted.value = event.currentTarget.value;
        }}
      />
      <ul class="rack-list" onKeyDown={moveAmongRows}>
        {found.map(entry => (
          <RackRow key={entry.id} entry={entry} />
        ))}
      </ul>
      {rack.length === 0 && (
        <div class="rack-empty">
          <p>No pairs yet. Make one from a tape, a caliper and a bench, or open a pair file.</p>
          <button type="button" onClick={newPair}>
            New pair
          </button>
          <button type="button" onClick={openFiles}>
            Open…
          </button>
        </div>
      )}
      {rack.length > 0 && found.length === 0 && (
        <p class="rack-empty">
          No pair matches “{wanted.value}”. Try part of a name, SL, GS or a length in cm.
        </p>
      )}
      {rack.length > 0 && (
        <footer class="rack-foot">
          {comparisons().length > 0 && (
            <>
              <h3>Compare</h3>
              {comparisons().map(comparison => (
                <button
                  key={comparison.label}
                  type="button"
                  class="bare compare"
                  onClick={() => show(comparison)}
                >
                  {comparison.label}
                </button>
              ))}
            </>
          )}
          <button type="button" class="quiet rack-save" onClick={() => void saveRack()}>
            {rackFile ? `Save ${rackFile.name}` : 'Save all as one rack file…'}
            {rackFileUnsaved.value && ' ●'}
          </button>
        </footer>
      )}
    </section>
  );
}

/** Up and down go from name to name. */
function moveAmongRows(event: KeyboardEvent): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const names = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>('.rack-name')];
  const row = (event.target as HTMLElement).closest('li');
  const at = names.findIndex(name => row?.contains(name));
  names[at + (event.key === 'ArrowDown' ? 1 : -1)]?.focus();
  event.preventDefault();
}
