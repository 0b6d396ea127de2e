import { line } from 'd3';
import type { JSX } from 'preact';
import { cosineRadius, tableRadius } from '../../../core/carve/index.ts';
import { leanIn, neededEdge } from '../../../core/run/index.ts';
import { DEGREE, KMH } from '../../../core/units/index.ts';
import { asked, chosenTurn, LEAST_EDGE, MOST_EDGE, radiusOf, turningOf } from '../../answers/index.ts';
import { TableProgress } from '../../controls/index.ts';
import { Chart, type Series } from '../../kit/index.ts';
import { activePair, type ChosenPair, t } from '../../state/index.ts';

import { turnAsked } from './turn-asked.ts';

const ANGLES = Float64Array.from({ length: MOST_EDGE - LEAST_EDGE + 1 }, (_, at) => LEAST_EDGE + at);
const SPEEDS = Float64Array.from({ length: 46 }, (_, at) => 10 + 2 * at);
/** Turn radius over edge angle: the bent ski a full line, the cosine rule dotted in the same colour. */
export function RadiusCompared({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  const { load } = asked.value;
  const turnings = pairs.map(turningOf);
  const rule = (pair: ChosenPair) => {
    const sidecut = radiusOf(pair.pair);
    return sidecut === null ? null : ANGLES.map(degrees => cosineRadius(sidecut, degrees * DEGREE));
  };
  const series = pairs.flatMap((pair, at): Series[] => {
    const { table, missing } = turnings[at]!.state;
    const { id, name, mark } = pair;
    if (table) {
      const y = ANGLES.map(degrees => tableRadius(table, degrees * DEGREE, load));
      return [{ id, label: name, mark, x: ANGLES, y }];
    }
    const y = missing ? rule(pair) : null;
    return y ? [{ id, label: t('compare.ruleOf', { name }), mark, x: ANGLES, y }] : [];
  });
  const rules = pairs.flatMap(pair => {
    const y = rule(pair);
    return y ? [{ pair, y }] : [];
  });
  // While tables are being solved the rules alone keep the axes.
  const drawn =
    series.length > 0
      ? series
      : rules.map(
          ({ pair, y }): Series => ({ id: pair.id, label: t('compare.rule'), x: ANGLES, y, context: true }),
        );
  const reach = Math.max(0, ...rules.map(({ y }) => y[0]!));
  return (
    <Chart
      title={t('compare.radiusAgainstEdge')}
      height={270}
      x={{ label: t('condition.edge'), measure: 'angleDeg', domain: [0, MOST_EDGE] }}
      y={{ label: t('compare.turnRadiusDotted'), measure: 'radius', zero: true, reach }}
      series={drawn}
      tools={<TableProgress tables={turnings.map(({ state }) => ({ ...state, stale: false }))} />}
      empty={t('common.noSidecut')}
      under={plot =>
        rules.map(({ pair, y }) => (
          <path
            key={pair.id}
            class="line context"
            d={
              line<number>(
                degrees => plot.x(degrees),
                (_, at) => plot.y(y[at]!),
              )(ANGLES) ?? ''
            }
            stroke={pair.mark.colour}
            stroke-dasharray="2 4"
          />
        ))
      }
    />
  );
}

/** Edge angle each pair needs for the chosen turn, over speed; under the dotted lean it slides. */
export function NeededEdgeCompared({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  const turn = chosenTurn(turnAsked.value);
  const bevel = activePair.value?.ski.baseBevel ?? 0;
  const series = pairs.flatMap((pair): Series[] => {
    const { radius } = turningOf(pair);
    if (!radius) return [];
    const y = SPEEDS.map(speed => (neededEdge(radius, turn, speed * KMH) ?? Number.NaN) / DEGREE);
    if (!y.some(Number.isFinite)) return [];
    return [{ id: pair.id, label: pair.name, mark: pair.mark, x: SPEEDS, y }];
  });
  const least: Series = {
    id: 'lean',
    label: t('compare.leastThatHolds'),
    x: SPEEDS,
    y: SPEEDS.map(speed => (leanIn(turn, speed * KMH) + bevel) / DEGREE),
    context: true,
  };
  const radius = { quantity: 'radius', value: turn.radius } as const;
  return (
    <Chart
      title={t('compare.edgeAngleFor', { radius })}
      height={270}
      x={{ label: t('condition.speed'), measure: 'speedKmh', domain: [10, 100] }}
      y={{ label: t('compare.edgeAngleDotted'), measure: 'angleDeg', domain: [0, 80] }}
      series={series.length > 0 ? [...series, least] : []}
      empty={t('compare.noneCarves', { radius })}
    />
  );
}
