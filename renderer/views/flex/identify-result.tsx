import type { JSX } from 'preact';
import { monotoneCubic } from '../../../core/numeric/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { beamOf, type Identified } from '../../answers/index.ts';
import { Chart, type Plot, type Series } from '../../kit/index.ts';
import { allInWords, type ChosenPair, changePair, report, t, view } from '../../state/index.ts';
import { sampled } from './stiffness-chart.tsx';
import { asIdentified } from './stiffness-edits.ts';

type Found = Extract<Identified, { ok: true }>;

/** The profile found with its band, what is left unexplained, and what the readings cannot tell. */
export function IdentifyResult({ active, found }: { active: ChosenPair; found: Found | null }): JSX.Element {
  const length = active.ski.contactLength;
  const present = beamOf(active.pair).bending;
  const series: Series[] = [];
  if (found) {
    const x = found.stations.map(station => station.x);
    const through = (pick: (station: Found['stations'][number]) => number) => {
      const log = monotoneCubic(
        x,
        found.stations.map(station => Math.log(pick(station))),
      );
      return sampled(at => Math.exp(log(at)), length);
    };
    const middle = through(station => station.newtonM2);
    series.push({
      id: 'found',
      label: t('flex.found'),
      mark: active.mark,
      ...middle,
      low: through(station => station.low).y,
      high: through(station => station.high).y,
    });
    if (present)
      series.push({ id: 'present', label: t('flex.asFiled'), context: true, ...sampled(present, length) });
  }
  const greatest = Math.max(1, ...(found?.stations.map(station => station.newtonM2) ?? []));
  return (
    <div class="flex-panel">
      <Chart
        title={t('flex.profileFound')}
        x={{ label: t('common.fromRearContact'), measure: 'station' }}
        y={{ label: t('flex.bandAxis'), measure: 'stiffness', zero: true, ceiling: greatest * 2 }}
        series={series}
        empty={t('flex.identifyEmpty')}
      >
        {plot => found && <Knots found={found} plot={plot} colour={active.mark.colour} />}
      </Chart>
      {found && <Verdict active={active} found={found} />}
    </div>
  );
}

function Knots({ found, plot, colour }: { found: Found; plot: Plot; colour: string }): JSX.Element {
  return (
    <g>
      {found.stations.map(({ x, newtonM2 }) => (
        <circle
          key={x}
          cx={plot.x(x)}
          cy={plot.y(newtonM2)}
          r={3.5}
          fill="var(--surface)"
          stroke={colour}
          stroke-width={1.5}
        />
      ))}
    </g>
  );
}

function Verdict({ active, found }: { active: ChosenPair; found: Found }): JSX.Element {
  const residual = formatQuantity(found.residual, 'deflection', { system: view.value.system }).text;
  const use = () => {
    const stations = found.stations.map(({ x, newtonM2 }) => ({
      fromTailMm: Math.min(active.pair.contactLengthMm, Math.round(x * 1e4) / 10),
      newtonM2: Math.round(newtonM2 * 10) / 10,
    }));
    const { plate } = active.pair;
    if (changePair(active.id, t('field.bending'), asIdentified(active.pair, stations)))
      report(t(plate ? 'flex.profileUsedWithPlate' : 'flex.profileUsed', { name: active.name }));
  };
  return (
    <div class="verdict">
      <div class="verdict-head">
        <p class={found.enough ? 'verdict-word' : 'verdict-word unsure'} role="status">
          {found.enough ? t('flex.readingsEnough') : t('flex.readingsNotEnough')}
        </p>
        {active.readOnly === undefined && (
          <button type="button" class={found.enough ? 'primary' : undefined} onClick={use}>
            {found.enough ? t('flex.useProfile') : t('flex.useAllTheSame')}
          </button>
        )}
      </div>
      <p>
        {allInWords(found.notes)} {t('flex.residual', { residual })}
      </p>
    </div>
  );
}
