import { openFiles, saveAll, saveCourse, saveEntry } from '../files/index.ts';
import { aboutOpen } from '../help/index.ts';
import type { MenuCommand } from '../host/index.ts';
import { exportFigure } from '../kit/index.ts';
import { printSheet } from '../print/index.ts';
import { newPair, showRecent } from '../rack/index.ts';
import {
  activePair,
  changeView,
  courseUnsaved,
  type Question,
  redo,
  report,
  t,
  undo,
  view,
} from '../state/index.ts';
import { board, views } from '../views/index.ts';
import { isTyping } from './keys.ts';

/** What each menu entry and its shortcut does, the same on both hosts. */
export function onCommand(command: MenuCommand): void {
  const modal = document.querySelector('dialog[open]') !== null;
  if ((command === 'undo' || command === 'redo') && (isTyping(document.activeElement) || modal)) {
    // While typing, the steps taken back are those of the text field.
    document.execCommand(command);
    return;
  }
  if (modal && !command.startsWith('look-') && command !== 'switch-units') return;
  actions[command]();
}

/** Saves pairs, rack and set; whether nothing unsaved is left. What stands in an open form is in no pair yet. */
export async function saveEverything(): Promise<boolean> {
  if (document.querySelector('dialog[open]')) {
    report(t('frame.closeFormFirst'), 'error');
    return false;
  }
  if (!(await saveAll())) return false;
  if (courseUnsaved.value) await saveCourse();
  return !courseUnsaved.value;
}

const show = (question: Question) => () => {
  if (views.some(each => each.question === question)) changeView({ question });
};

const withActive = (action: (id: string, name: string) => unknown) => () => {
  const active = activePair.value;
  if (active) void action(active.id, active.name);
  else report(t('common.noPair'), 'error');
};

const exported = (what: 'picture' | 'table') => () => {
  if (!exportFigure(what)) report(t(what === 'picture' ? 'frame.noPicture' : 'frame.noTable'), 'error');
};

const actions: Record<MenuCommand, () => void> = {
  'new-pair': () => newPair(),
  open: () => void openFiles(),
  recent: () => void showRecent(),
  save: withActive(id => saveEntry(id)),
  'save-as': withActive(id => saveEntry(id, true)),
  'save-all': () => void saveEverything(),
  'export-picture': exported('picture'),
  'export-table': exported('table'),
  'pair-sheet': withActive((_, name) => printSheet(name)),
  undo,
  redo,
  'view-shape': show('shape'),
  'view-flex': show('flex'),
  'view-edge': show('edge'),
  'view-slope': show('slope'),
  'view-set': show('set'),
  board: () => {
    if (board) changeView({ board: !view.value.board });
  },
  'look-light': () => changeView({ theme: 'snow' }),
  'look-dark': () => changeView({ theme: 'night' }),
  'look-projector': () => changeView({ theme: 'projector' }),
  'switch-units': () => changeView({ system: view.value.system === 'metric' ? 'imperial' : 'metric' }),
  cautions: () => {
    aboutOpen.value = true;
  },
};
