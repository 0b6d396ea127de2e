import type { KeyGroup } from '../help/index.ts';
import { actions } from './actions.ts';

const pressed = (key: string): string => key.replace('CmdOrCtrl', 'Ctrl').replaceAll('+', ' ');

/** The keys of every action as the help page lists them: those pressed alone, and those with Ctrl. */
export const actionKeys: readonly KeyGroup[] = [
  { title: 'help.anywhere' as const, ours: (key: string) => !key.startsWith('CmdOrCtrl') },
  { title: 'help.filesAndSteps' as const, ours: (key: string) => key.startsWith('CmdOrCtrl') },
].map(({ title, ours }) => ({
  title,
  keys: actions.flatMap(({ label, keys = [] }) =>
    keys.filter(ours).map(key => [pressed(key), label] as const),
  ),
}));
