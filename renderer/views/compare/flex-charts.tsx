import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { bendable, unitBench } from '../../answers/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import { type ChosenPair, conditions, view } from '../../state/index.ts';

const SAMPLES = 121;
const EMPTY = 'None of these pairs states a bending stiffness yet: open its form and fill in EI.';

/** Bending stiffness along each ski, boot centres in line. */
export function StiffnessCompared({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  const series = bendable(pairs).map(({ id, name, mark, ski, bending }): Series => {
    const at = Float64Array.from({ length: SAMPLES }, (_, i) => (i / (SAMPLES - 1)) * ski.contactLength);
    return { id, label: name, mark, x: at.map(x => x - ski.bootCentre), y: at.map(x => bending(x)) };
  });
  return (
    <Chart
      title="Bending stiffness along the ski"
      height={250}
      x={{ label: 'From the boot centre', measure: 'station' }}
      y={{ label: 'EI', measure: 'stiffness', zero: true }}
      series={series}
      empty={EMPTY}
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
  const load = formatQuantity(benchLoadN, 'force', { system: view.value.system }).text;
  return (
    <Chart
      title={`Bent by ${load} at the boot`}
      height={250}
      x={{ label: 'From the boot centre', measure: 'station' }}
      y={{ label: 'Height', measure: 'deflection', zero: true }}
      series={series}
      empty={EMPTY}
    />
  );
}
