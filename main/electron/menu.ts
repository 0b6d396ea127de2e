import type { MenuItemConstructorOptions } from 'electron';
import { ACTIONS, type ActionName, type ActionRecord, type Menu, say, shortcutOf } from '../host/index.ts';

type Items = MenuItemConstructorOptions[];

const separator: MenuItemConstructorOptions = { type: 'separator' };

/** The menu bar, from the list of actions. An entry only sends its name; the page decides what it means. */
export function menuTemplate(send: (action: ActionName) => void, isMac: boolean): Items {
  const menu = (under: Menu, ours: Items = []): MenuItemConstructorOptions => ({
    label: say({ key: `menu.${under}` }),
    submenu: [...entries(under, send), ...(ours.length > 0 ? [separator, ...ours] : [])],
  });
  return [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    menu('file', isMac ? [] : [{ role: 'quit' }]),
    menu('edit', [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }]),
    menu('question'),
    menu('look', [
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { role: 'resetZoom' },
      { role: 'togglefullscreen' },
    ]),
    menu('help'),
  ];
}

/** The actions of a menu, groups set apart by lines. */
function entries(under: Menu, send: (action: ActionName) => void): Items {
  const own = ACTIONS.filter(
    (action: ActionRecord) => action.menu?.under === under,
  ) as readonly ActionRecord[];
  return own.flatMap((action, at): Items => {
    const before = own[at - 1];
    const entry: MenuItemConstructorOptions = {
      id: action.name,
      label: say({ key: action.label }),
      accelerator: shortcutOf(action),
      click: () => send(action.name),
    };
    return before && before.menu?.group !== action.menu?.group ? [separator, entry] : [entry];
  });
}
