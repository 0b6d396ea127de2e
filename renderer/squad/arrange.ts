import { radiusOf, type SquadRow } from '../answers/index.ts';

export type Show = 'all' | 'due' | 'odd';
export type SortKey = 'rack' | 'name' | 'owner' | 'discipline' | 'length' | 'radius' | 'edge' | 'wax';

export interface Arrangement {
  readonly words: string;
  /** Empty for everyone; `none` for pairs without an owner. */
  readonly owner: string;
  readonly discipline: string;
  readonly show: Show;
  readonly sort: SortKey;
  readonly down: boolean;
}

export const NO_OWNER = '\u0000none';

export const AS_IN_RACK: Arrangement = {
  words: '',
  owner: '',
  discipline: '',
  show: 'all',
  sort: 'rack',
  down: false,
};

/** Rows that match, in the order asked for; equals keep their order in the rack. */
export function arrange(rows: readonly SquadRow[], by: Arrangement): SquadRow[] {
  const words = by.words.toLowerCase().split(/\s+/).filter(Boolean);
  const matching = rows.filter(row => {
    if (by.owner !== '' && row.owner !== (by.owner === NO_OWNER ? '' : by.owner)) return false;
    if (by.discipline !== '' && (row.pair.discipline ?? 'other') !== by.discipline) return false;
    if (by.show === 'due' && !row.due.due) return false;
    if (by.show === 'odd' && row.odd.length === 0) return false;
    const text = textOf(row);
    const discipline = (row.pair.discipline ?? 'other').toLowerCase();
    // "sl" means the discipline, not the slalom of a note.
    return words.every(word => (DISCIPLINES.has(word) ? word === discipline : text.includes(word)));
  });
  if (by.sort === 'rack') return by.down ? matching.reverse() : matching;
  const value = VALUES[by.sort];
  const sign = by.down ? -1 : 1;
  return matching.sort((one, other) => {
    const [a, b] = [value(one), value(other)];
    // What is not known stands last either way.
    if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
    return (
      sign * (typeof a === 'string' ? a.localeCompare(String(b), 'en', { numeric: true }) : a - Number(b))
    );
  });
}

const DISCIPLINES = new Set(['sl', 'gs', 'sg', 'dh']);

const textOf = ({ pair, owner }: SquadRow) =>
  `${pair.name} ${owner} ${pair.discipline ?? 'other'} ${pair.lengthMm / 10} ${pair.notes ?? ''}`.toLowerCase();

const VALUES: Record<Exclude<SortKey, 'rack'>, (row: SquadRow) => string | number | null> = {
  name: row => row.pair.name,
  owner: row => row.owner || null,
  discipline: row => row.pair.discipline ?? 'other',
  length: row => row.pair.lengthMm,
  radius: row => radiusOf(row.pair),
  edge: row => row.due.edge.days ?? Number.POSITIVE_INFINITY,
  wax: row => row.due.wax.days ?? Number.POSITIVE_INFINITY,
};
