import type { JSX } from 'preact';
import { Segments } from '../kit/index.ts';
import {
  activePair,
  changeView,
  redoLabel,
  THEMES,
  t,
  undoLabel,
  unsavedEntries,
  view,
} from '../state/index.ts';
import { perform } from './actions.ts';

export function TopBar(): JSX.Element {
  const active = activePair.value;
  const unsaved = unsavedEntries.value.length;
  return (
    <header class="top-bar">
      <p class="program">Turnwright</p>
      <div class="top-group">
        <button type="button" class="quiet" onClick={() => perform('open')}>
          {t('common.open')}
        </button>
        <button
          type="button"
          class="quiet"
          disabled={!active}
          title={active ? t('frame.savePair', { name: active.name }) : t('frame.chooseFirst')}
          onClick={() => perform('save')}
        >
          {t('common.save')}
        </button>
        <button
          type="button"
          class="quiet"
          disabled={!active}
          title={active ? t('frame.sheetOf', { name: active.name }) : t('frame.chooseFirst')}
          onClick={() => perform('pair-sheet')}
        >
          {t('frame.sheet')}
        </button>
        <span class="unsaved">{unsaved > 0 ? `● ${t('frame.unsavedCount', { count: unsaved })}` : ''}</span>
      </div>
      <div class="top-group">
        <button
          type="button"
          class="quiet"
          disabled={undoLabel.value === null}
          aria-label={t('common.undo')}
          title={undoLabel.value ? t('frame.undoStep', { step: undoLabel.value }) : t('frame.nothingToUndo')}
          onClick={() => perform('undo')}
        >
          ↶<span class="word"> {t('common.undo')}</span>
        </button>
        <button
          type="button"
          class="quiet"
          disabled={redoLabel.value === null}
          aria-label={t('common.redo')}
          title={redoLabel.value ? t('frame.redoStep', { step: redoLabel.value }) : t('frame.nothingToRedo')}
          onClick={() => perform('redo')}
        >
          ↷<span class="word"> {t('common.redo')}</span>
        </button>
      </div>
      <div class="top-group right">
        <Segments
          label={t('frame.units')}
          labelHidden
          value={view.value.system}
          options={[
            { value: 'metric', label: t('frame.metric') },
            { value: 'imperial', label: t('frame.imperial') },
          ]}
          onInput={system => changeView({ system })}
        />
        <Segments
          label={t('frame.look')}
          labelHidden
          value={view.value.theme}
          options={THEMES.map(theme => ({ value: theme, label: t(`frame.look.${theme}`) }))}
          onInput={theme => changeView({ theme })}
        />
        <button
          type="button"
          class="quiet"
          id="board-button"
          title={t('frame.boardHint')}
          onClick={() => perform('board')}
        >
          {t('frame.board')}
        </button>
        <button type="button" class="quiet" onClick={() => perform('help')}>
          {t('frame.help')}
        </button>
      </div>
    </header>
  );
}
