import { describe, expect, it } from 'vitest';
import {
  ACTIONS,
  type ActionRecord,
  commandFor,
  pageActionFor,
  shortcutOf,
} from '../../../main/host/actions.ts';
import { events } from '../../../main/host/messages.ts';

const actions: readonly ActionRecord[] = ACTIONS;
const key = (
  name: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', true>> = {},
) => ({
  key: name,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe('actions', () => {
  it('have one name each, and no key twice', () => {
    const names = actions.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    const keys = actions.flatMap(each => each.keys ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('cross the boundary by their names, and nothing else does', () => {
    for (const { name } of actions) expect(events.command.safeParse(name).success).toBe(true);
    expect(events.command.safeParse('erase-disk').success).toBe(false);
  });

  it('can all be reached: by a key or in a menu', () => {
    expect(actions.filter(({ keys, menu }) => !menu && !keys?.length)).toEqual([]);
  });
});

describe('keys', () => {
  it('of the menu are the host’s: with Ctrl or ⌘, or beyond the letters', () => {
    expect(commandFor(key('s', { ctrlKey: true }))).toBe('save');
    expect(commandFor(key('S', { metaKey: true, shiftKey: true }))).toBe('save-as');
    expect(commandFor(key('3', { ctrlKey: true }))).toBe('view-edge');
    expect(commandFor(key('F9'))).toBe('board');
    expect(commandFor(key('s', { ctrlKey: true, altKey: true }))).toBeNull();
    expect(commandFor(key('k', { ctrlKey: true }))).toBeNull();
  });

  it('pressed alone are the page’s', () => {
    expect(pageActionFor(key('3'))?.name).toBe('view-edge');
    expect(pageActionFor(key('?', { shiftKey: true }))?.name).toBe('help');
    expect(pageActionFor(key('u'))?.name).toBe('switch-units');
    expect(pageActionFor(key('B', { shiftKey: true }))?.name).toBe('activate-b');
    expect(pageActionFor(key('F6'))?.name).toBe('next-region');
    expect(pageActionFor(key('F6', { shiftKey: true }))?.name).toBe('previous-region');
    expect(pageActionFor(key('s'))).toBeNull();
  });

  it('are never both’s', () => {
    for (const { keys = [] } of actions) {
      for (const each of keys) {
        const parts = each.split('+');
        const pressed = key(parts.at(-1)!, {
          ...(parts.includes('CmdOrCtrl') && { ctrlKey: true }),
          ...(parts.includes('Shift') && { shiftKey: true }),
        });
        expect([commandFor(pressed), pageActionFor(pressed)].filter(Boolean)).toHaveLength(1);
      }
    }
    expect(
      actions.filter(({ menu, keys }) => menu && keys?.some(each => each.length > 1)).every(shortcutOf),
    ).toBe(true);
  });
});
