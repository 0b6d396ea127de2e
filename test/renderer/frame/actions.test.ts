import { beforeEach, describe, expect, it } from 'vitest';
import { actions, perform } from '../../../renderer/frame/actions.ts';
import { actionKeys } from '../../../renderer/frame/key-groups.ts';
import { aboutOpen, helpOpen } from '../../../renderer/help/index.ts';
import {
  addEntries,
  chooseOnly,
  EMPTY_PROJECT,
  load,
  project,
  status,
  t,
  undoLabel,
  view,
} from '../../../renderer/state/index.ts';
import { plainPair } from '../plain-pair.ts';

/** A page with nothing on it, over which a dialog may lie. */
const page = { dialog: false, commands: [] as string[] };
Object.assign(globalThis, {
  HTMLElement: class {},
  document: {
    activeElement: null,
    querySelector: (selector: string) => (page.dialog && selector === 'dialog[open]' ? {} : null),
    execCommand: (name: string) => page.commands.push(name),
  },
});

beforeEach(() => {
  page.dialog = false;
  page.commands = [];
  helpOpen.value = false;
  aboutOpen.value = false;
  status.value = null;
  load(EMPTY_PROJECT);
});

describe('an action', () => {
  it('that does not apply says why, in words', () => {
    for (const name of ['save', 'save-as', 'pair-sheet'] as const) {
      expect(perform(name)).toBe(false);
      expect(status.value).toEqual({
        kind: 'error',
        text: 'No pair is chosen; choose one in the rack first.',
      });
    }
    expect(perform('export-table')).toBe(false);
    expect(status.value?.text).toBe('This view has no table to export.');
    expect(perform('export-picture')).toBe(false);
    expect(status.value?.text).toBe('This view has no picture to export.');
  });

  it('shows its question, look or units', () => {
    for (const question of ['shape', 'flex', 'edge', 'slope', 'set'] as const) {
      perform(`view-${question}`);
      expect(view.value.question).toBe(question);
    }
    perform('look-dark');
    expect(view.value.theme).toBe('night');
    perform('next-look');
    expect(view.value.theme).toBe('projector');
    perform('switch-units');
    expect(view.value.system).toBe('imperial');
    perform('board');
    expect(view.value.board).toBe(true);
    perform('help');
    perform('cautions');
    expect([helpOpen.value, aboutOpen.value]).toEqual([true, true]);
  });

  it('makes the pair of a letter the active one, where there is one', () => {
    const entries = ['Ash', 'Beech'].map(name => ({ id: name, pair: plainPair(name), saved: null }));
    load(chooseOnly(['Ash', 'Beech'])(addEntries(entries)(EMPTY_PROJECT)));
    perform('activate-b');
    expect(project.value.activeId).toBe('Beech');
    perform('activate-d');
    expect(project.value.activeId).toBe('Beech');
  });

  it('waits while a dialog lies over the page, but for looks, units and steps within its fields', () => {
    page.dialog = true;
    expect(perform('new-pair')).toBe(false);
    expect(project.value.rack).toEqual([]);
    expect(perform('look-projector')).toBe(true);
    perform('undo');
    perform('redo');
    expect(page.commands).toEqual(['undo', 'redo']);
    page.dialog = false;
    perform('new-pair');
    expect(project.value.rack).toHaveLength(1);
    perform('undo');
    expect(project.value.rack).toEqual([]);
    expect(undoLabel.value).toBeNull();
  });
});

describe('the help page', () => {
  it('lists every key of every action, in words', () => {
    const listed = actionKeys.flatMap(group => group.keys.map(([key]) => key));
    expect(listed).toHaveLength(actions.flatMap(({ keys = [] }) => keys).length);
    expect(listed).toEqual(expect.arrayContaining(['Ctrl Shift Z', '?', 'F6', '5', 'Ctrl 5']));
    for (const [, meaning] of actionKeys.flatMap(group => group.keys))
      expect(t(meaning)).not.toMatch(/^action\./);
  });
});
