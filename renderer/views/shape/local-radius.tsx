import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { radiusOf, sidecutOf } from '../../answers/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import { chosenPairs, t } from '../../state/index.ts';

/** Local radius along the edge: level where one arc is cut, curved where the shape changes its mind. */
export function LocalRadius(): JSX.Element {
  const cursor = useSignal<number | null>(null);
  const series = chosenPairs.value.map((pair): Series => {
    const { local } = sidecutOf(pair.pair);
    return {
      id: pair.id,
      label: pair.name,
      mark: pair.mark,
      x: local.map(each => each.x),
      y: local.map(each => each.radius),
    };
  });
  const greatest = Math.max(5, ...chosenPairs.value.map(pair => radiusOf(pair.pair) ?? 0));
  return (
    <Chart
      title={t('shape.radiusAlongEdge')}
      x={{ label: t('common.fromRearContact'), measure: 'station' }}
      y={{ label: t('shape.localRadius'), measure: 'radius', zero: true, ceiling: greatest * 2 }}
      series={series}
      cursor={cursor}
    />
  );
}
