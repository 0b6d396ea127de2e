import type { JSX } from 'preact';
import {
  type Bendable,
  flatTableOf,
  MOST_LOAD_N,
  pressedShape,
  rest,
  setupOf,
  type TableCurve,
  tableCurves,
} from '../../answers/index.ts';
import { Chart, Handle, type Plot, type Series, valueAt } from '../../kit/index.ts';
import { changeConditions, conditions, t } from '../../state/index.ts';
import { useHeld } from './use-held.ts';

/** How far the ski comes down under the press as the load grows. */
export function LoadCurve({ pairs, lead }: { pairs: readonly Bendable[]; lead: Bendable }): JSX.Element {
  const load = conditions.value.benchLoadN;
  const [most, hold] = useHeld(load > 450 ? MOST_LOAD_N : 500);
  const onTable = rest.value === 'table';
  const setups = pairs.map(pair => setupOf(pair.ski, load));
  const curves = tableCurves.value;
  const series = pairs.flatMap((pair, at): Series[] => {
    const { id, name: label, mark } = pair;
    if (!onTable) {
      const { spring } = pressedShape(pair, setups[at], 'bench');
      return [{ id, label, mark, x: [0, most], y: [0, most / spring] }];
    }
    const curve = curves.value?.find(each => each.id === id);
    return curve ? [{ id, label, mark, ...upTo(most, curve) }] : [];
  });
  return (
    <div class="flex-panel" {...hold}>
      <Chart
        title={onTable ? t('flex.loadFlatTable') : t('flex.loadAndDeflection')}
        x={{ label: t('condition.load'), measure: 'force', domain: [0, most] }}
        y={{ label: t('flex.deflectionAtLoad'), measure: 'deflection', zero: true }}
        series={series}
        empty={curves.error ?? t('flex.workingOutCamber')}
      >
        {plot => (
          <>
            {onTable &&
              pairs.map(pair => (
                <Touches key={pair.id} pair={pair} plot={plot} named={pair.id === lead.id} />
              ))}
            <LoadGrip plot={plot} lead={lead} load={load} most={most} />
          </>
        )}
      </Chart>
    </div>
  );
}

/** The part of a curve the chart has room for. */
function upTo(most: number, { loads, deflections }: TableCurve): Pick<Series, 'x' | 'y'> {
  const inside = loads.filter(load => load < most);
  const end = valueAt({ x: loads, y: deflections }, most);
  return {
    x: [...inside, most],
    y: [...deflections.slice(0, inside.length), end ?? Number.NaN],
  };
}

/** Where the base first touches the table and, when it ever does, lies down. */
function Touches({ pair, plot, named }: { pair: Bendable; plot: Plot; named: boolean }): JSX.Element {
  const setup = setupOf(pair.ski, 0);
  const { firstTouch, flatten } = flatTableOf(pair, setup.at);
  const mark = (load: number, text: string) => {
    if (!(load > 0) || load > plot.x.domain()[1]) return null;
    const { deflection } = pressedShape(pair, { ...setup, load }, 'table');
    return (
      <g transform={`translate(${plot.x(load)},${plot.y(deflection)})`}>
        <path class="touch" d="M0,-5l5,5l-5,5l-5,-5z" stroke={pair.mark.colour} />
        {named && (
          <text class="halo" x={9} y={17} fill={pair.mark.colour}>
            {text}
          </text>
        )}
      </g>
    );
  };
  return (
    <g>
      {mark(firstTouch, t('flex.touchesHere'))}
      {flatten !== null && mark(flatten, t('flex.flatHere'))}
    </g>
  );
}

function LoadGrip(props: { plot: Plot; lead: Bendable; load: number; most: number }): JSX.Element {
  const { plot, lead, load, most } = props;
  const { deflection } = pressedShape(lead, setupOf(lead.ski, load), rest.value);
  return (
    <Handle
      label={t('flex.loadOnCurve', { name: lead.name })}
      measure="force"
      value={load}
      min={0}
      max={Math.max(load, most)}
      step={5}
      along="x"
      x={plot.x(load)}
      y={plot.y(deflection)}
      invert={px => plot.x.invert(px)}
      onInput={benchLoadN => changeConditions(t('flex.step.load'), { benchLoadN }, 'benchLoadN')}
    />
  );
}
