import type { JSX } from 'preact';
import { Segments } from '../kit/index.ts';
import {
  activePair,
  changeView,
  redoLabel,
  THEMES,
  undoLabel,
  unsavedEntries,
  view,
} from '../state/index.ts';
import { THEME_NAMES } from '../theme/index.ts';
import { perform } from './actions.ts';

export function TopBar(): JSX.Element {
  const active = activePair.value;
  const unsaved = unsavedEntries.value.length;
  return (
    <header class="top-bar">
      <p class="program">Turnwright</p>
      <div class="top-group">
        <button type="button" class="quiet" onClick={() => perform('open')}>
          Open…
        </button>
        <button
          type="button"
          class="quiet"
          disabled={!active}
          title={active ? `Save ${active.name}` : 'Choose a pair first'}
          onClick={() => perform('save')}
        >
          Save
        </button>
        <button
          type="button"
          class="quiet"
          disabled={!active}
          title={active ? `A page about ${active.name}, as PDF` : 'Choose a pair first'}
          onClick={() => perform('pair-sheet')}
        >
          Sheet
        </button>
        <span class="unsaved">{unsaved > 0 ? `● ${unsaved} unsaved` : ''}</span>
      </div>
      <div class="top-group">
        <button
          type="button"
          class="quiet"
          disabled={undoLabel.value === null}
          aria-label="Undo"
          title={undoLabel.value ? `Undo: ${undoLabel.value}` : 'Nothing to undo'}
          onClick={() => perform('undo')}
        >
          ↶<span class="word"> Undo</span>
        </button>
        <button
          type="button"
          class="quiet"
          disabled={redoLabel.value === null}
          aria-label="Redo"
          title={redoLabel.value ? `Redo: ${redoLabel.value}` : 'Nothing to redo'}
          onClick={() => perform('redo')}
        >
          ↷<span class="word"> Redo</span>
        </button>
      </div>
      <div class="top-group right">
        <Segments
          label="Units"
          labelHidden
          value={view.value.system}
          options={[
            { value: 'metric', label: 'Metric' },
            { value: 'imperial', label: 'Imperial' },
          ]}
          onInput={system => changeView({ system })}
        />
        <Segments
          label="Look"
          labelHidden
          value={view.value.theme}
          options={THEMES.map(theme => ({ value: theme, label: THEME_NAMES[theme] }))}
          onInput={theme => changeView({ theme })}
        />
        <button
          type="button"
          class="quiet"
          id="board-button"
          title="The full-screen teaching mode (F9)"
          onClick={() => perform('board')}
        >
          Board
        </button>
        <button type="button" class="quiet" onClick={() => perform('help')}>
          Help
        </button>
      </div>
    </header>
  );
}
