import { computed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { openFiles, saveRack } from '../files/index.ts';
import {
  changeView,
  chosenPairs,
  ownerOf,
  project,
  rackFileUnsaved,
  tuneLogUnsaved,
} from '../state/index.ts';
import { comparisons, show } from './comparisons.ts';
import { useGrowing } from './growing.ts';
import { newPair } from './pair-form-host.tsx';
import { RackRow } from './rack-row.tsx';
import { showRecent } from './recent-list.tsx';
import { enterRows, moveAmongRows } from './row-keys.ts';
import { SetAsideNote } from './set-aside.tsx';

const rackNow = computed(() => project.value.rack);
const rackFileNow = computed(() => project.value.rackFile);
const activeNow = computed(() => project.value.activeId);

/** The loaded pairs: find, choose up to four, edit, save; and comparisons that are one click away. */
export function RackPanel(): JSX.Element {
  const wanted = useSignal('');
  const rack = rackNow.value;
  const rackFile = rackFileNow.value;
  const words = wanted.value.toLowerCase().split(/\s+/).filter(Boolean);
  const found = rack.filter(({ pair }) => {
    const text = `${pair.name} ${ownerOf(pair)} ${pair.discipline ?? ''} ${pair.lengthMm / 10}`.toLowerCase();
    return words.every(word => text.includes(word));
  });
  const active = activeNow.value;
  const inHand = found.findIndex(entry => entry.id === active);
  const { shown, end, drawAll } = useGrowing(found.length, inHand);
  const list = useRef<HTMLUListElement>(null);
  const searching = words.length > 0;
  // A pair that was made, opened or chosen elsewhere, or found by a search that is over, is brought into sight.
  useEffect(() => {
    if (!searching) list.current?.querySelector('.active')?.scrollIntoView({ block: 'nearest' });
  }, [active, searching]);
  const stop = inHand >= 0 ? active : found[0]?.id;
  const chosen = chosenPairs.value.length;
  return (
    <section class="rack" id="rack" aria-label="Rack" tabIndex={-1}>
      <header class="rack-head">
        <h2>Rack</h2>
        <button
          type="button"
          class="quiet"
          title="Files opened or saved lately (Ctrl Shift O)"
          onClick={() => void showRecent()}
        >
          Recent…
        </button>
        <button type="button" class="quiet" onClick={newPair}>
          New pair
        </button>
      </header>
      <SetAsideNote />
      <input
        id="rack-search"
        class="rack-search"
        type="search"
        placeholder={`Find among ${rack.length}`}
        aria-label="Find a pair by name, owner, discipline or length"
        value={wanted.value}
        onInput={event => {
          wanted.value = event.currentTarget.value;
        }}
        onKeyDown={event => enterRows(event, '.rack-name')}
      />
      <ul ref={list} class="rack-list" onKeyDown={event => moveAmongRows(event, 'li', '.rack-name', drawAll)}>
        {found.slice(0, shown).map(entry => (
          <RackRow key={entry.id} entry={entry} focusable={entry.id === stop} />
        ))}
        {shown < found.length && (
          <li class="rack-more" ref={end}>
            {shown} of {found.length} shown; scroll on or search
          </li>
        )}
      </ul>
      {rack.length === 0 && (
        <div class="rack-empty">
          <p>No pairs yet. Make one from a tape, a caliper and a bench, or open a pair file.</p>
          <button type="button" onClick={newPair}>
            New pair
          </button>
          <button type="button" onClick={() => void openFiles()}>
            Open…
          </button>
          <button type="button" onClick={() => changeView({ page: 'squad' })}>
            Import a squad’s sheet…
          </button>
        </div>
      )}
      {rack.length > 0 && found.length === 0 && (
        <p class="rack-empty">
          No pair matches “{wanted.value}”. Try part of a name or an owner, SL, GS or a length in cm.
        </p>
      )}
      {rack.length > 0 && (
        <footer class="rack-foot">
          <div class="rack-pages">
            <button type="button" onClick={() => changeView({ page: 'squad' })}>
              Squad rack
            </button>
            <button
              type="button"
              disabled={chosen < 2}
              title={chosen < 2 ? 'Tick two to four pairs first' : 'The ticked pairs side by side'}
              onClick={() => changeView({ page: 'compare' })}
            >
              Compare {chosen >= 2 ? chosen : ''}
            </button>
          </div>
          {comparisons().length > 0 && (
            <>
              <h3>Worth comparing</h3>
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
            {(rackFileUnsaved.value || tuneLogUnsaved.value) && (
              <span class="unsaved">
                {' '}
                ●<span class="sr-only"> unsaved changes</span>
              </span>
            )}
          </button>
        </footer>
      )}
    </section>
  );
}
