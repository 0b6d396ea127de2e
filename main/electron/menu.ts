import type { MenuItemConstructorOptions } from 'electron';
import { type MenuCommand, shortcuts } from '../host/index.ts';

const separator: MenuItemConstructorOptions = { type: 'separator' };

/** The menu bar. Entries of our own only send their command; the page decides what it means. */
export function menuTemplate(
  send: (command: MenuCommand) => void,
  isMac: boolean,
): MenuItemConstructorOptions[] {
  const entry = (label: string, command: MenuCommand): MenuItemConstructorOptions => ({
    id: command,
    label,
    accelerator: shortcuts[command],
    click: () => send(command),
  });
  return [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    {
      label: 'File',
      submenu: [
        entry('New pair', 'new-pair'),
        entry('Open…', 'open'),
        entry('Open recent…', 'recent'),
        separator,
        entry('Save', 'save'),
        entry('Save as…', 'save-as'),
        entry('Save all', 'save-all'),
        separator,
        entry('Picture of this view…', 'export-picture'),
        entry('Table of this view…', 'export-table'),
        entry('Pair sheet as PDF…', 'pair-sheet'),
        ...(isMac ? [] : [separator, { role: 'quit' as const }]),
      ],
    },
    {
      label: 'Edit',
      submenu: [
        entry('Undo', 'undo'),
        entry('Redo', 'redo'),
        separator,
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: 'Question',
      submenu: [
        entry('Shape: what radius is cut into this ski?', 'view-shape'),
        entry('Flex: how does it bend?', 'view-flex'),
        entry('Edge: what turn does it carve?', 'view-edge'),
        entry('Slope: what happens down the hill?', 'view-slope'),
        entry('Set: which pair suits this set?', 'view-set'),
        separator,
        entry('Board', 'board'),
      ],
    },
    {
      label: 'Look',
      submenu: [
        entry('Snow', 'look-light'),
        entry('Night', 'look-dark'),
        entry('Projector', 'look-projector'),
        separator,
        entry('Metric or imperial', 'switch-units'),
        separator,
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'resetZoom' },
        { role: 'togglefullscreen' },
      ],
    },
    { label: 'Help', submenu: [entry('Cautions and limits', 'cautions')] },
  ];
}
