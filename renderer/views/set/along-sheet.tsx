import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { GateReading } from '../../../core/course/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { DEGREE } from '../../../core/units/index.ts';
import { chosenRanking, courseConditions } from '../../answers/index.ts';
import { Chart, Empty, Segments } from '../../kit/index.ts';
import { chosenPairs } from '../../state/index.ts';
import { Standing } from './standing.tsx';

type Shown = 'edge' | 'hold' | 'speed' | 'load';

const QUANTITIES: Record<
  Shown,
  { readonly label: string; readonly measure: MeasureName; of(gate: GateReading): number }
> = {
  edge: { label: 'Needed edge', measure: 'angle', of: gate => gate.neededEdge ?? 89 * DEGREE },
  hold: { label: 'Hold', measure: 'angle', of: gate => gate.hold },
  speed: { label: 'Speed', measure: 'speed', of: gate => gate.speed },
  load: { label: 'Load', measure: 'force', of: gate => gate.load },
};

const shown = signal<Shown>('edge');

/** One quantity from gate to gate, the chosen pairs over one another. */
export function AlongSheet(): JSX.Element {
  const answer = chosenRanking.value.value;
  if (!answer) {
    return chosenPairs.value.length > 0 ? (
      <Standing />
    ) : (
      <Empty>
        <p>Choose a pair in the rack to see what each gate asks of it.</p>
      </Empty>
    );
  }
  const { label, measure, of } = QUANTITIES[shown.value];
  const numbers = answer.gates.map((_, i) => i + 1);
  const series = chosenPairs.value.flatMap(pair => {
    const ranked = answer.ranking.pairs.find(each => answer.pairs[each.index].id === pair.id);
    if (!ranked) return [];
    return [{ id: pair.id, label: pair.name, mark: pair.mark, x: numbers, y: ranked.report.gates.map(of) }];
  });
  const limit = courseConditions.value.greatestEdge!;
  const ends = [1, answer.gates.length];
  return (
    <Chart
      title={`${label} at each gate`}
      x={{ label: 'gate', measure: 'count' }}
      y={{ label: label.toLowerCase(), measure, zero: shown.value === 'hold' }}
      series={
        shown.value === 'edge'
          ? [...series, { id: 'limit', label: 'greatest edge', context: true, x: ends, y: [limit, limit] }]
          : series
      }
      tools={
        <Segments
          label="Quantity"
          labelHidden
          value={shown.value}
          options={(Object.keys(QUANTITIES) as Shown[]).map(value => ({ value, label: value }))}
          onInput={value => {
            shown.value = value;
          }}
        />
      }
    />
  );
}
