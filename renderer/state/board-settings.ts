import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import { type BoardSettings, DEFAULT_BOARD } from './project.ts';
import { edit, project } from './store.ts';

/** Which skis lie on the board. */
export const board: ReadonlySignal<BoardSettings> = computed(() => project.value.board);

/** Changes the board as an undo step; a drag's moves share `key`. */
export function changeBoard(label: string, change: Partial<BoardSettings>, key: string | null = null): void {
  edit(label, before => ({ ...before, board: { ...before.board, ...change } }), key);
}

const slot = z.string().nullable().catch(null);

const schema = z.object({
  skis: z.tuple([slot, slot]).catch([...DEFAULT_BOARD.skis]),
  sideBySide: z.boolean().catch(DEFAULT_BOARD.sideBySide),
});

/** Settings from a draft; what is none falls back to its default, as does a pair not in the rack. */
export function boardFrom(value: unknown, ids: ReadonlySet<string>): BoardSettings {
  const read = schema.safeParse(value);
  if (!read.success) return DEFAULT_BOARD;
  const known = (id: string | null) => (id !== null && ids.has(id) ? id : null);
  const [first, second] = read.data.skis;
  return { ...read.data, skis: [known(first), known(second)] };
}
