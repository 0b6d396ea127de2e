import type { PlainKey } from '../../core/language/index.ts';
import { t } from '../state/index.ts';

/** Keys, as they are printed on the keyboard, and what they do, under a heading. */
export interface KeyGroup {
  readonly title: PlainKey;
  readonly keys: readonly (readonly [key: string, meaning: PlainKey])[];
}

const CONTROLS: readonly {
  readonly title: PlainKey;
  readonly keys: readonly (readonly [key: PlainKey, meaning: PlainKey])[];
}[] = [
  {
    title: 'help.controls',
    keys: [
      ['help.key.arrows', 'help.does.step'],
      ['help.key.ends', 'help.does.ends'],
      ['help.key.escape', 'help.does.cursorOff'],
      ['help.key.enter', 'help.does.working'],
    ],
  },
  {
    title: 'help.tables',
    keys: [
      ['help.key.slash', 'help.does.search'],
      ['help.key.upDown', 'help.does.neighbour'],
      ['help.key.page', 'help.does.ten'],
      ['help.key.ends', 'help.does.firstLast'],
      ['help.key.space', 'help.does.choose'],
      ['help.key.enter', 'help.does.edit'],
      ['help.key.delete', 'help.does.remove'],
    ],
  },
  {
    title: 'help.squadOnly',
    keys: [
      ['help.key.enterHeading', 'help.does.sort'],
      ['help.key.paste', 'help.does.paste'],
      ['help.key.enterTune', 'help.does.log'],
    ],
  },
];

/** Keys of controls, as the help panel lists them after those of the actions. */
export const controlKeys = (): readonly KeyGroup[] =>
  CONTROLS.map(({ title, keys }) => ({
    title,
    keys: keys.map(([key, meaning]) => [t(key), meaning] as const),
  }));
