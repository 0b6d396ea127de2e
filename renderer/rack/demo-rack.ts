import { demoPairs } from '../demo/index.ts';
import type { RackEntry } from '../state/index.ts';

/** The demo rack as it comes with the program: in no file, and nothing to lose. */
export const demoEntries = (): RackEntry[] =>
  demoPairs.map((pair, at) => ({ id: `demo-${at + 1}`, pair, saved: pair }));
