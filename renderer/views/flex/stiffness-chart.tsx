import { scaleLinear } from 'd3';
import type { JSX } from 'preact';
import type { Profile } from '../../../core/flex/index.ts';
import { MM } from '../../../core/units/index.ts';
import { beamOf } from '../../answers/index.ts';
import { Chart, Handle, type Plot, Segments, type Series } from '../../kit/index.ts';
import { type ChosenPair, chosenPairs, t } from '../../state/index.ts';
import { field } from './bench.ts';
import { setStiffness, withStation } from './stiffness-edits.ts';
import { StiffnessStrip } from './stiffness-strip.tsx';
import { useHeld } from './use-held.ts';

const SAMPLES = 121;

/** EI or GJ along the ski, with a grip on every station of the active pair. */
export function StiffnessChart({ active }: { active: ChosenPair }): JSX.Element {
  const which = field.value;
  const series = chosenPairs.value.flatMap((pair): Series[] => {
    const profile = beamOf(pair.pair)[which];
    if (!profile) return [];
    const length = pair.ski.contactLength;
    const whole = { id: pair.id, label: pair.name, mark: pair.mark, ...sampled(profile, length) };
    const bare = beamOf(pair.pair).bare[which];
    if (pair.id !== active.id || !pair.pair.plate || !bare) return [whole];
    return [whole, { id: 'bare', label: t('flex.withoutPlate'), context: true, ...sampled(bare, length) }];
  });
  const greatest = Math.max(1, ...series.flatMap(each => Array.from(each.y)));
  const [domain, hold] = useHeld(
    scaleLinear()
      .domain([0, greatest * 1.2])
      .nice(5)
      .domain() as [number, number],
  );
  const symbol = which === 'bending' ? t('flex.section.bending') : t('flex.gj');
  return (
    <div class="flex-panel" {...hold}>
      <Chart
        title={t('flex.stiffness')}
        x={{ label: t('common.fromRearContact'), measure: 'station' }}
        y={{ label: symbol, measure: 'stiffness', domain }}
        series={series}
        tools={<FieldControl />}
        empty={which === 'torsion' ? t('flex.noTorsion') : t('print.noBending')}
      >
        {plot => <Grips active={active} plot={plot} most={domain[1]} />}
      </Chart>
      <StiffnessStrip active={active} />
    </div>
  );
}

function FieldControl(): JSX.Element {
  return (
    <Segments
      label={t('flex.whichStiffness')}
      labelHidden
      value={field.value}
      options={[
        { value: 'bending', label: t('flex.section.bending'), title: t('flex.bending') },
        { value: 'torsion', label: t('flex.gj'), title: t('flex.torsion') },
      ]}
      onInput={value => {
        field.value = value;
      }}
    />
  );
}

export function sampled(profile: Profile, length: number): { x: Float64Array; y: Float64Array } {
  const x = Float64Array.from({ length: SAMPLES }, (_, at) => (at / (SAMPLES - 1)) * length);
  return { x, y: x.map(profile) };
}

/** Uniform and station profiles are dragged; formulas and layups are edited where they are written. */
function Grips({ active, plot, most }: { active: ChosenPair; plot: Plot; most: number }): JSX.Element | null {
  const which = field.value;
  const stiffness = active.pair[which];
  if (stiffness?.kind !== 'uniform' && stiffness?.kind !== 'stations') return null;
  const symbol = which === 'bending' ? t('flex.section.bending') : t('flex.gj');
  const grip = (key: number, label: string, x: number, newtonM2: number, set: (value: number) => void) => (
    <Handle
      key={key}
      label={t('flex.ofPair', { symbol, name: active.name, where: label })}
      measure="stiffness"
      value={newtonM2}
      min={1}
      max={Math.max(newtonM2, most)}
      step={which === 'bending' ? 5 : 2}
      along="y"
      x={plot.x(x)}
      y={plot.y(newtonM2)}
      invert={px => plot.y.invert(px)}
      disabled={active.readOnly !== undefined}
      onInput={set}
    />
  );
  if (stiffness.kind === 'uniform') {
    return grip(0, t('flex.everywhere'), active.ski.contactLength / 2, stiffness.newtonM2, newtonM2 =>
      setStiffness(active.id, which, { ...stiffness, newtonM2 }, `${active.id} ${which}`),
    );
  }
  return (
    <g>
      {stiffness.stations.map(({ fromTailMm, newtonM2 }, at) =>
        grip(at, t('flex.atStation', { at: fromTailMm }), fromTailMm * MM, newtonM2, value =>
          setStiffness(active.id, which, withStation(stiffness, at, value), `${active.id} ${which} ${at}`),
        ),
      )}
    </g>
  );
}
