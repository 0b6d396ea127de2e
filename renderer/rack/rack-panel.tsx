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
  t,
  tuneLogUnsaved,
} from '../state/index.ts';
import { comparisons, show } from './comparisons.ts';
import { useGrowing } from './growing.ts';
import { newPair } from './pair-form-host.tsx';
import { RackRow } from './rack-row.tsx';
import { showRecent } from './recent-list.tsx';
import { enterRows, moveAmongRows } from './row-keys.ts';
import { SetAsideNote } from './unreadable-work.tsx';

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
    <section class="rack" id="rack" aria-label={t('rack.title')} tabIndex={-1}>
      <header class="rack-head">
        <h2>{t('rack.title')}</h2>
        <button type="button" class="quiet" title={t('rack.recentHint')} onClick={() => void showRecent()}>
          {t('rack.recent')}
        </button>
        <button type="button" class="quiet" onClick={newPair}>
          {t('rack.newPair')}
        </button>
      </header>
      <SetAsideNote />
      <input
        id="rack-search"
        class="rack-search"
        type="search"
        placeholder={t('rack.findAmong', { count: rack.length })}
        aria-label={t('rack.findLabel')}
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
            {t('rack.shownOf', { shown, count: found.length })}
          </li>
        )}
      </ul>
      {rack.length === 0 && (
        <div class="rack-empty">
          <p>{t('rack.empty')}</p>
          <button type="button" onClick={newPair}>
            {t('rack.newPair')}
          </button>
          <button type="button" onClick={() => void openFiles()}>
            {t('common.open')}
          </button>
          <button type="button" onClick={() => changeView({ page: 'squad' })}>
            {t('rack.importSheet')}
          </button>
        </div>
      )}
      {rack.length > 0 && found.length === 0 && (
        <p class="rack-empty">{t('rack.noMatch', { words: wanted.value })}</p>
      )}
      {rack.length > 0 && (
        <footer class="rack-foot">
          <div class="rack-pages">
            <button type="button" onClick={() => changeView({ page: 'squad' })}>
              {t('rack.squad')}
            </button>
            <button
              type="button"
              disabled={chosen < 2}
              title={t(chosen < 2 ? 'rack.tickFirst' : 'rack.compareHint')}
              onClick={() => changeView({ page: 'compare' })}
            >
              {chosen >= 2 ? t('rack.compareCount', { count: chosen }) : t('rack.compare')}
            </button>
          </div>
          {comparisons().length > 0 && (
            <>
              <h3>{t('rack.worthComparing')}</h3>
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
            {rackFile ? t('rack.saveNamed', { name: rackFile.name }) : t('rack.saveAll')}
            {(rackFileUnsaved.value || tuneLogUnsaved.value) && (
              <span class="unsaved">
                {' '}
                ●<span class="sr-only"> {t('common.unsavedChanges')}</span>
              </span>
            )}
          </button>
        </footer>
      )}
    </section>
  );
}
