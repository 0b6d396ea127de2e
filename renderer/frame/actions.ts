import type { PlainKey } from '../../core/language/index.ts';
import { openFiles, saveAll, saveCourse, saveEntry } from '../files/index.ts';
import { aboutOpen, helpOpen } from '../help/index.ts';
import { ACTIONS, type ActionName, type ActionRecord } from '../host/index.ts';
import { canExport, exportFigure } from '../kit/index.ts';
import { printSheet } from '../print/index.ts';
import { newPair, showRecent } from '../rack/index.ts';
import {
  activate,
  activePair,
  type ChosenPair,
  changeView,
  courseUnsaved,
  editWithoutUndo,
  project,
  type Question,
  redo,
  report,
  THEMES,
  t,
  undo,
  view,
} from '../state/index.ts';
import { nextRegion } from './regions.ts';
import { isTyping } from './typing.ts';

interface Doing {
  /** Why it does not apply just now; absent or null when it does. */
  when?(): PlainKey | null;
  perform(): void;
}

/** An action whole: name, label, keys and place in the menu, when it applies and what it does. */
export interface Action extends ActionRecord, Doing {}

/** Whether a dialog lies over the page. */
export const modal = (): boolean => document.querySelector('dialog[open]') !== null;

/** Saves pairs, rack and set; whether nothing unsaved is left. What stands in an open form is in no pair yet. */
export async function saveEverything(): Promise<boolean> {
  if (modal()) {
    report(t('frame.closeFormFirst'), 'error');
    return false;
  }
  if (!(await saveAll())) return false;
  if (courseUnsaved.value) await saveCourse();
  return !courseUnsaved.value;
}

const show = (question: Question): Doing => ({ perform: () => changeView({ question }) });

const withActive = (act: (pair: ChosenPair) => unknown): Doing => ({
  when: () => (activePair.value ? null : 'common.noPair'),
  perform: () => void act(activePair.value!),
});

const exporting = (what: 'picture' | 'table', none: PlainKey): Doing => ({
  when: () => (canExport(what) ? null : none),
  perform: () => exportFigure(what),
});

/** While something is typed, the steps taken back are those of its field. */
const step = (name: 'undo' | 'redo', take: () => void): Doing => ({
  perform: () => {
    if (isTyping(document.activeElement) || modal()) document.execCommand(name);
    else take();
  },
});

const activating = (place: number): Doing => ({
  perform: () => {
    const id = project.value.chosen[place];
    if (id) editWithoutUndo(activate(id));
  },
});

const look = (theme: (typeof THEMES)[number]): Doing => ({ perform: () => changeView({ theme }) });

const doings: Readonly<Record<ActionName, Doing>> = {
  'new-pair': { perform: newPair },
  open: { perform: () => void openFiles() },
  recent: { perform: () => void showRecent() },
  save: withActive(({ id }) => saveEntry(id)),
  'save-as': withActive(({ id }) => saveEntry(id, true)),
  'save-all': { perform: () => void saveEverything() },
  'export-picture': exporting('picture', 'frame.noPicture'),
  'export-table': exporting('table', 'frame.noTable'),
  'pair-sheet': withActive(({ name }) => printSheet(name)),
  undo: step('undo', undo),
  redo: step('redo', redo),
  'view-shape': show('shape'),
  'view-flex': show('flex'),
  'view-edge': show('edge'),
  'view-slope': show('slope'),
  'view-set': show('set'),
  board: { perform: () => changeView({ board: !view.value.board }) },
  'look-light': look('snow'),
  'look-dark': look('night'),
  'look-projector': look('projector'),
  'next-look': {
    perform: () => changeView({ theme: THEMES[(THEMES.indexOf(view.value.theme) + 1) % THEMES.length]! }),
  },
  'switch-units': {
    perform: () => changeView({ system: view.value.system === 'metric' ? 'imperial' : 'metric' }),
  },
  'activate-a': activating(0),
  'activate-b': activating(1),
  'activate-c': activating(2),
  'activate-d': activating(3),
  find: { perform: () => document.getElementById('rack-search')?.focus() },
  'next-region': { perform: () => nextRegion(1) },
  'previous-region': { perform: () => nextRegion(-1) },
  help: {
    perform: () => {
      helpOpen.value = true;
    },
  },
  cautions: {
    perform: () => {
      aboutOpen.value = true;
    },
  },
};

/** Every action there is, in the order of the menus. */
export const actions: readonly Action[] = ACTIONS.map(each => ({ ...each, ...doings[each.name] }));

const byName = new Map(actions.map(action => [action.name, action]));

/** Does what was asked for by menu, key or button, or says why not; whether it applied. */
export function perform(name: ActionName): boolean {
  const action = byName.get(name)!;
  const { overDialogs } = action;
  // Under a dialog only its fields take steps back.
  if (modal() && !overDialogs && name !== 'undo' && name !== 'redo') return false;
  const not = action.when?.() ?? null;
  if (not === null) action.perform();
  else report(t(not), 'error');
  return not === null;
}
