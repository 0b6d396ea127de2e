import { group } from 'd3';
import { oddEntries, type Pair, type RackTune, type TuneEntry } from '../../core/pair/index.ts';
import { belongsTo, type DueAfter, inWords, ownerOf, type RackEntry } from '../state/index.ts';
import { type DueState, dueState, urgency } from './due.ts';

/** One pair of the squad as its table, its filters and its lists see it. */
export interface SquadRow {
  readonly entry: RackEntry;
  readonly pair: Pair;
  readonly owner: string;
  readonly tunes: readonly TuneEntry[];
  readonly due: DueState;
  readonly urgency: number;
  /** What deserves a second look, a sentence each. */
  readonly odd: readonly string[];
}

/** Every pair of the rack with its log, what is due on `today` and what is odd about it. */
export function squadRows(
  rack: readonly RackEntry[],
  log: readonly RackTune[],
  after: DueAfter,
  today: string,
): SquadRow[] {
  const odd = oddIn(rack);
  const entries = log.flatMap(tune => (tune.ok ? [tune.entry] : []));
  const byId = group(entries, entry => entry.pairId ?? '');
  const loose = byId.get('') ?? [];
  return rack.map((entry, at) => {
    const { pair } = entry;
    const own = pair.id === undefined ? [] : (byId.get(pair.id) ?? []);
    const tunes = [...own, ...loose.filter(each => belongsTo(each, pair))];
    const due = dueState(tunes, after, today);
    return {
      entry,
      pair,
      owner: ownerOf(pair),
      tunes,
      due,
      urgency: urgency(due, after),
      odd: odd.get(at + 1) ?? [],
    };
  });
}

/** What is odd about pairs of the rack, by their place counted from 1. Owners are asked for once any is given. */
export function oddIn(rack: readonly RackEntry[]): Map<number, string[]> {
  const listed = rack.map(({ pair }, at) => ({ row: at + 1, pair, owner: ownerOf(pair), extra: {} }));
  const found = new Map<number, string[]>();
  for (const { row, remark } of oddEntries(listed)) {
    found.set(row, [...(found.get(row) ?? []), inWords(remark)]);
  }
  return found;
}
