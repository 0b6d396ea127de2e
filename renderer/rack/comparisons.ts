import { changeView, chooseOnly, edit, project, type Question, type RackEntry, t } from '../state/index.ts';

/** A comparison that is one click away: which pairs, and the question to look at them with. */
export interface Comparison {
  readonly label: string;
  readonly ids: readonly string[];
  readonly question: Question;
}

/** Comparisons the rack has the pairs for. */
export function comparisonsOf(rack: readonly RackEntry[]): Comparison[] {
  const first = (discipline: string) => rack.find(entry => entry.pair.discipline === discipline)?.id;
  const slalom = first('SL');
  const giantSlalom = first('GS');
  const slaloms = rack.filter(entry => entry.pair.discipline === 'SL').slice(0, 2);
  const comparisons: Comparison[] = [];
  if (slalom && giantSlalom) {
    comparisons.push({
      label: t('rack.slalomAgainstGiantSlalom'),
      ids: [slalom, giantSlalom],
      question: 'edge',
    });
  }
  if (slaloms.length === 2) {
    comparisons.push({
      label: t('rack.shapeByShape', { one: slaloms[0]!.pair.name, other: slaloms[1]!.pair.name }),
      ids: slaloms.map(entry => entry.id),
      question: 'shape',
    });
  }
  return comparisons;
}

export function show(comparison: Comparison): void {
  edit(t('rack.compareStep'), chooseOnly(comparison.ids));
  changeView({ question: comparison.question });
}

export const comparisons = (): Comparison[] => comparisonsOf(project.value.rack);
