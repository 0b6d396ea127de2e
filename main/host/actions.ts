import type { PlainKey } from '../../core/language/index.ts';

export type Menu = 'file' | 'edit' | 'question' | 'look' | 'help';

interface Known {
  readonly name: string;
  /** What menu and help page call it. */
  readonly label: PlainKey;
  /** In Electron's spelling. A key with a modifier, or beyond the letters, is its shortcut wherever there is a menu. */
  readonly keys?: readonly string[];
  /** Where it stands in the menu; entries of another group are set apart by a line. */
  readonly menu?: { readonly under: Menu; readonly group: number };
  /** Goes on while something is laid over the page. */
  readonly overDialogs?: true;
}

/**
 * Everything the program does when a person asks for it by menu or key, in the order of the menus: the menu bar, the
 * shortcuts of both hosts, the messages between them and the page, and the help page are read from here. The page adds
 * when it applies and what it does.
 */
export const ACTIONS = [
  { name: 'new-pair', label: 'action.newPair', keys: ['CmdOrCtrl+N'], menu: { under: 'file', group: 1 } },
  { name: 'open', label: 'common.open', keys: ['CmdOrCtrl+O'], menu: { under: 'file', group: 1 } },
  { name: 'recent', label: 'action.recent', keys: ['CmdOrCtrl+Shift+O'], menu: { under: 'file', group: 1 } },
  { name: 'save', label: 'common.save', keys: ['CmdOrCtrl+S'], menu: { under: 'file', group: 2 } },
  { name: 'save-as', label: 'action.saveAs', keys: ['CmdOrCtrl+Shift+S'], menu: { under: 'file', group: 2 } },
  { name: 'save-all', label: 'action.saveAll', menu: { under: 'file', group: 2 } },
  { name: 'export-picture', label: 'action.exportPicture', menu: { under: 'file', group: 3 } },
  { name: 'export-table', label: 'action.exportTable', menu: { under: 'file', group: 3 } },
  { name: 'pair-sheet', label: 'action.pairSheet', keys: ['CmdOrCtrl+P'], menu: { under: 'file', group: 3 } },
  { name: 'undo', label: 'common.undo', keys: ['CmdOrCtrl+Z'], menu: { under: 'edit', group: 1 } },
  { name: 'redo', label: 'common.redo', keys: ['CmdOrCtrl+Shift+Z'], menu: { under: 'edit', group: 1 } },
  {
    name: 'view-shape',
    label: 'action.shape',
    keys: ['1', 'CmdOrCtrl+1'],
    menu: { under: 'question', group: 1 },
  },
  {
    name: 'view-flex',
    label: 'action.flex',
    keys: ['2', 'CmdOrCtrl+2'],
    menu: { under: 'question', group: 1 },
  },
  {
    name: 'view-edge',
    label: 'action.edge',
    keys: ['3', 'CmdOrCtrl+3'],
    menu: { under: 'question', group: 1 },
  },
  {
    name: 'view-slope',
    label: 'action.slope',
    keys: ['4', 'CmdOrCtrl+4'],
    menu: { under: 'question', group: 1 },
  },
  {
    name: 'view-set',
    label: 'action.set',
    keys: ['5', 'CmdOrCtrl+5'],
    menu: { under: 'question', group: 1 },
  },
  { name: 'board', label: 'action.board', keys: ['F9'], menu: { under: 'question', group: 2 } },
  { name: 'look-light', label: 'frame.look.snow', menu: { under: 'look', group: 1 }, overDialogs: true },
  { name: 'look-dark', label: 'frame.look.night', menu: { under: 'look', group: 1 }, overDialogs: true },
  {
    name: 'look-projector',
    label: 'frame.look.projector',
    menu: { under: 'look', group: 1 },
    overDialogs: true,
  },
  { name: 'next-look', label: 'action.nextLook', keys: ['L'] },
  {
    name: 'switch-units',
    label: 'action.switchUnits',
    keys: ['U'],
    menu: { under: 'look', group: 2 },
    overDialogs: true,
  },
  { name: 'activate-a', label: 'action.activateA', keys: ['A'] },
  { name: 'activate-b', label: 'action.activateB', keys: ['B'] },
  { name: 'activate-c', label: 'action.activateC', keys: ['C'] },
  { name: 'activate-d', label: 'action.activateD', keys: ['D'] },
  { name: 'find', label: 'action.find', keys: ['/'] },
  { name: 'next-region', label: 'action.nextRegion', keys: ['F6'], overDialogs: true },
  { name: 'previous-region', label: 'action.previousRegion', keys: ['Shift+F6'], overDialogs: true },
  { name: 'help', label: 'help.title', keys: ['?'], menu: { under: 'help', group: 1 } },
  { name: 'cautions', label: 'action.cautions', menu: { under: 'help', group: 1 } },
] as const satisfies readonly Known[];

export type ActionName = (typeof ACTIONS)[number]['name'];

/** What both sides of the seam know of an action. */
export interface ActionRecord extends Known {
  readonly name: ActionName;
}

const RECORDS: readonly ActionRecord[] = ACTIONS;

/** A key that does nothing else while something is typed in: it has a modifier, or is beyond the letters. */
const isShortcut = (key: string): boolean => key.length > 1;

/** The key the menu shows for an action, and that the host listens to. */
export const shortcutOf = ({ keys, menu }: ActionRecord): string | undefined =>
  menu && keys?.find(isShortcut);

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

function spelt(key: Pressed): string {
  const { key: name } = key;
  const letter = name.length === 1;
  const control = key.ctrlKey || key.metaKey;
  // Shift is in the sign of a key alone: "?" is not spelt "Shift+?".
  const shift = key.shiftKey && (control || !letter);
  return `${control ? 'CmdOrCtrl+' : ''}${shift ? 'Shift+' : ''}${letter ? name.toUpperCase() : name}`;
}

/** The action whose shortcut in the menu was pressed, or null. */
export function commandFor(key: Pressed): ActionName | null {
  if (key.altKey) return null;
  const pressed = spelt(key);
  return RECORDS.find(action => shortcutOf(action) === pressed)?.name ?? null;
}

/** The action of a key that is the page's own, no menu's shortcut; null where there is none. */
export function pageActionFor(key: Pressed): ActionRecord | null {
  if (key.altKey || key.ctrlKey || key.metaKey) return null;
  const pressed = spelt(key);
  return RECORDS.find(action => action.keys?.includes(pressed) && shortcutOf(action) !== pressed) ?? null;
}
