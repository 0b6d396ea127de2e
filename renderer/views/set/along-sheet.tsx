import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { gapAlong } from '../../../core/line/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { type QuickestPair, setRunOf, setRuns } from '../../answers/index.ts';
import { Chart, Empty, Segments } from '../../kit/index.ts';
import { chosenPairs, t } from '../../state/index.ts';
import { Waiting } from './waiting.tsx';

type Shown = 'behind' | 'edge' | 'grip' | 'speed' | 'load';

const QUANTITIES: Record<
  Shown,
  {
    readonly label: PlainKey;
    readonly measure: MeasureName;
    of(pair: QuickestPair, first: QuickestPair): ArrayLike<number>;
  }
> = {
  behind: {
    label: 'set.along.behind',
    measure: 'time',
    of: (pair, first) => gapAlong(pair.run, first.run).gap,
  },
  edge: { label: 'set.along.edge', measure: 'angle', of: ({ run }) => run.edge.map(Math.abs) },
  grip: { label: 'set.along.grip', measure: 'angle', of: ({ run }) => run.hold },
  speed: { label: 'set.along.speed', measure: 'speed', of: ({ run }) => run.massSpeed },
  load: { label: 'set.along.load', measure: 'bodyWeights', of: ({ run }) => run.push },
};

const shown = signal<Shown>('behind');

/** One quantity down the hill, the chosen pairs over one another: above all where one wins on another. */
export function AlongSheet(): JSX.Element {
  const first = setRuns.value.value?.pairs[0];
  if (!first) {
    return chosenPairs.value.length > 0 ? (
      <Waiting />
    ) : (
      <Empty>
        <p>{t('set.chooseForGates')}</p>
      </Empty>
    );
  }
  const { label, measure, of } = QUANTITIES[shown.value];
  const series = chosenPairs.value.flatMap(pair => {
    const run = setRunOf(pair.id);
    if (!run) return [];
    const y = of(run, first);
    return [{ id: pair.id, label: pair.name, mark: pair.mark, x: run.run.y.slice(0, y.length), y }];
  });
  return (
    <Chart
      title={t(label)}
      x={{ label: t('set.along.down'), measure: 'distance' }}
      y={{ label: t(label), measure, zero: shown.value === 'behind' || shown.value === 'grip' }}
      series={series}
      tools={
        <Segments
          label={t('set.along.quantity')}
          labelHidden
          value={shown.value}
          options={(Object.keys(QUANTITIES) as Shown[]).map(value => ({
            value,
            label: t(`set.along.short.${value}`),
          }))}
          onInput={value => {
            shown.value = value;
          }}
        />
      }
    />
  );
}
