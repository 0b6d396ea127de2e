import type { MenuCommand } from './messages.ts';

/** Keys of the commands that have one, in Electron's spelling; the browser host reads the same list. */
export const shortcuts: Partial<Record<MenuCommand, string>> = {
  'new-pair': 'CmdOrCtrl+N',
  open: 'CmdOrCtrl+O',
  recent: 'CmdOrCtrl+Shift+O',
  save: 'CmdOrCtrl+S',
  'save-as': 'CmdOrCtrl+Shift+S',
  'pair-sheet': 'CmdOrCtrl+P',
  undo: 'CmdOrCtrl+Z',
  redo: 'CmdOrCtrl+Shift+Z',
  'view-shape': 'CmdOrCtrl+1',
  'view-flex': 'CmdOrCtrl+2',
  'view-edge': 'CmdOrCtrl+3',
  'view-slope': 'CmdOrCtrl+4',
  'view-set': 'CmdOrCtrl+5',
  board: 'F9',
};

/** What a key press means, or null. */
export function commandFor(
  key: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
): MenuCommand | null {
  if (key.altKey) return null;
  const modifiers = `${key.ctrlKey || key.metaKey ? 'CmdOrCtrl+' : ''}${key.shiftKey ? 'Shift+' : ''}`;
  const pressed = `${modifiers}${key.key.length === 1 ? key.key.toUpperCase() : key.key}`;
  for (const [command, keys] of Object.entries(shortcuts)) {
    if (keys === pressed) return command as MenuCommand;
  }
  return null;
}
