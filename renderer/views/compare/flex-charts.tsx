import type { JSX } from 'preact';
import { bendable, unitBench } from '../../answers/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import { type ChosenPair, conditions, t } from '../../state/index.ts';

const SAMPLES = 121;

/** Bending stiffness along each ski, boot centres in line. */
export function StiffnessCompared({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  const series = bendable(pairs).map(({ id, name, mark, ski, bending }): Series => {
    const at = Float64Array.from({ length: SAMPLES }, (_, i) => (i / (SAMPLES - 1)) * ski.contactLength);
    return { id, label: name, mark, x: at.map(x => x - ski.bootCentre), y: at.map(x => bending(x)) };
  });
  return (
    <Chart
      title={t('common.bendingAlongSki')}
      height={250}
      x={{ label: t('common.fromBootCentre'), measure: 'station' }}
      y={{ label: t('print.bendingSymbol'), measure: 'stiffness', zero: true }}
      series={series}
      empty={t('compare.noStiffness')}
    />
  );
}

/** Each ski on its contact points, pressed at the boot centre by the bench load. */
export function BendCompared({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  const { benchLoadN } = conditions.value;
  const series = bendable(pairs).map((pair): Series => {
    const { contactLength, bootCentre } = pair.ski;
    const bench = unitBench(pair, 0, contactLength, bootCentre);
    return {
      id: pair.id,
      label: pair.name,
      mark: pair.mark,
      x: bench.x.map(x => x - bootCentre),
      y: bench.deflection.map(down => -benchLoadN * down),
    };
  });
  return (
    <Chart
      title={t('compare.bentBy', { load: { quantity: 'force', value: benchLoadN } })}
      height={250}
      x={{ label: t('common.fromBootCentre'), measure: 'station' }}
      y={{ label: t('compare.height'), measure: 'deflection', zero: true }}
      series={series}
      empty={t('compare.noStiffness')}
    />
  );
}
