import { expect, it, vi } from 'vitest';
import { menuTemplate } from '../../../main/electron/menu.ts';
import { ACTIONS } from '../../../main/host/index.ts';

type Entry = { id?: string; label?: string; accelerator?: string; type?: string; click?: () => void };
const entriesOf = (isMac: boolean, send: (name: string) => void = () => {}) =>
  menuTemplate(send, isMac).flatMap(({ submenu }) => (submenu ?? []) as Entry[]);

it('holds every action that has a place in it, once, in words', () => {
  const ids = entriesOf(false).flatMap(({ id }) => id ?? []);
  expect(ids).toEqual(ACTIONS.flatMap(action => ('menu' in action ? [action.name] : [])));
  for (const { id, label } of entriesOf(false)) if (id) expect(label).not.toContain('action.');
  expect(menuTemplate(() => {}, false).map(({ label }) => label)).toEqual([
    'File',
    'Edit',
    'Question',
    'Look',
    'Help',
  ]);
});

it('shows the shortcut the hosts listen to, and sends the name', () => {
  const send = vi.fn();
  const save = entriesOf(true, send).find(({ id }) => id === 'save');
  expect(save).toMatchObject({ label: 'Save', accelerator: 'CmdOrCtrl+S' });
  save?.click?.();
  expect(send).toHaveBeenCalledWith('save');
  // A single sign would be taken from whoever is typing it.
  for (const { accelerator } of entriesOf(true)) expect(accelerator?.length).not.toBe(1);
});

it('sets groups apart, and never begins or ends with a line', () => {
  for (const isMac of [true, false]) {
    for (const { submenu } of menuTemplate(() => {}, isMac)) {
      const types = ((submenu ?? []) as Entry[]).map(({ type }) => type);
      if (types.length === 0) continue;
      expect(types[0]).not.toBe('separator');
      expect(types.at(-1)).not.toBe('separator');
      expect(types.some((type, at) => type === 'separator' && types[at + 1] === 'separator')).toBe(false);
    }
  }
});
