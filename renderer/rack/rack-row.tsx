import { computed, useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { formatQuantity, MM } from '../../core/units/index.ts';
import { radiusOf } from '../answers/index.ts';
import { saveEntry } from '../files/index.ts';
import { PairBadge } from '../kit/index.ts';
import {
  addEntries,
  choose,
  disciplineText,
  edit,
  isUnsaved,
  joinsRackFile,
  letterFree,
  newId,
  ownerOf,
  PAIR_MARKS,
  project,
  type RackEntry,
  t,
  view,
} from '../state/index.ts';
import { remove, select, toggle } from './choosing.ts';
import { editPair } from './pair-form-host.tsx';
import { removeRow } from './row-keys.ts';

const system = computed(() => view.value.system);

interface Props {
  readonly entry: RackEntry;
  /** The one row of the list that the Tab key stops at. */
  readonly focusable: boolean;
}

/** One pair. What it reads of the project is narrow, so that a dragged slider leaves eighty rows alone. */
export function RackRow({ entry, focusable }: Props): JSX.Element {
  const { pair, id } = entry;
  const place = useComputed(() => project.value.chosen.indexOf(id)).value;
  const mark = place >= 0 ? PAIR_MARKS[place]! : null;
  const active = useComputed(() => project.value.activeId === id).value;
  const radius = radiusOf(pair);
  const owner = ownerOf(pair);
  const facts = [
    disciplineText(pair.discipline),
    formatQuantity(pair.lengthMm * MM, 'skiLength', { system: system.value, decimals: 0 }).text,
    radius === null ? t('rack.noSidecut') : formatQuantity(radius, 'radius', { system: system.value }).text,
  ];
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === ' ') toggle(entry);
    else if (event.key === 'Enter') editPair(id);
    else if (event.key === 'Delete') removeRow(event, 'li', '.rack-name', () => remove(entry));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <li class={`rack-row${active ? ' active' : ''}`} data-id={id}>
      <input
        type="checkbox"
        tabIndex={-1}
        checked={mark !== null}
        aria-label={t('rack.choose', { name: pair.name })}
        onChange={event => {
          toggle(entry);
          // Refused when all letters are in use: the box goes back to what is true.
          event.currentTarget.checked = project.value.chosen.includes(id);
        }}
      />
      <button
        type="button"
        class="bare rack-name"
        tabIndex={focusable ? 0 : -1}
        aria-pressed={active}
        onClick={() => select(entry)}
        onKeyDown={onKeyDown}
      >
        <span class="rack-title">
          {mark && <PairBadge mark={mark} />}
          <span class="rack-words" title={pair.name}>
            {pair.name}
          </span>
          {isUnsaved(entry) && (
            <span class="unsaved" title={t('common.unsavedChanges')}>
              ●<span class="sr-only"> {t('common.unsavedChanges')}</span>
            </span>
          )}
          {pair.demo && (
            <span class="demo" title={t('common.demoData')}>
              {t('common.demo')}
            </span>
          )}
          {entry.readOnly && <span class="demo">{t('common.readOnly')}</span>}
        </span>
        <span class="rack-facts">
          {owner && (
            <span class="rack-owner" title={owner}>
              {owner}
            </span>
          )}
          {facts.map(fact => (
            <span key={fact}>{fact}</span>
          ))}
        </span>
      </button>
      {active && (
        <div class="rack-actions">
          <button type="button" class="quiet" onClick={() => editPair(id)}>
            {t(entry.readOnly ? 'common.view' : 'common.edit')}
          </button>
          <button type="button" class="quiet" onClick={() => duplicate(entry)}>
            {t('rack.duplicate')}
          </button>
          <button type="button" class="quiet" onClick={() => void saveEntry(id)}>
            {t('common.save')}
          </button>
          <button type="button" class="quiet" onClick={() => remove(entry)}>
            {t('rack.remove')}
          </button>
        </div>
      )}
    </li>
  );
}

function duplicate({ pair }: RackEntry): void {
  const copy = { ...pair, name: t('rack.copyOf', { name: pair.name }).slice(0, 120), id: undefined };
  edit(t('rack.duplicateStep', { name: pair.name }), now => {
    const entry: RackEntry = { id: newId(), pair: copy, saved: null, inRackFile: joinsRackFile(now) };
    const grown = addEntries([entry])(now);
    return letterFree(grown) ? choose(entry.id)(grown) : grown;
  });
}
