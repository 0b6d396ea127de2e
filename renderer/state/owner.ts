import type { Pair } from '../../core/pair/index.ts';

const MOST = 120;

/** Whose pair it is; empty when its file does not say. */
export const ownerOf = (pair: Pair): string => pair.owner?.trim() ?? '';

/** The pair with another owner; none takes the field away. */
export function withOwner(pair: Pair, owner: string): Pair {
  const { owner: _before, ...rest } = pair;
  const text = owner.slice(0, MOST);
  return (text.trim() === '' ? rest : { ...rest, owner: text }) as Pair;
}

/** Cells a technician's sheet had beyond what a pair file knows, by heading. */
export function extraOf(pair: Pair): readonly (readonly [string, string])[] {
  const { sheetCells } = pair;
  if (typeof sheetCells !== 'object' || sheetCells === null) return [];
  return Object.entries(sheetCells).map(([heading, cell]) => [heading, String(cell)] as const);
}
