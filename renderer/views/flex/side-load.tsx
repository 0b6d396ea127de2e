import type { JSX } from 'preact';
import { formatQuantity, MM } from '../../../core/units/index.ts';
import { MOST_LOAD_N, pressRange, type Rest, setupOf } from '../../answers/index.ts';
import { Handle } from '../../kit/index.ts';
import { changeConditions, conditions, t, view } from '../../state/index.ts';
import { moveBench } from './bench.ts';
import { mostDrawn, RAIL, type Shown, type SideScale } from './side-scale.ts';

/** px of arrow at no load, and a N. */
const SHORTEST = 16;

/** The press: an arrow as long as the load is great, a grip for the load and one for its place. */
export function SideLoad({
  shown,
  scale,
  rest,
}: {
  shown: Shown;
  scale: SideScale;
  rest: Rest;
}): JSX.Element {
  const { pair, shape } = shown;
  const load = conditions.value.benchLoadN;
  const { system } = view.value;
  const x = scale.x(pair, shape.at);
  const tip = scale.y(shape.pressedAt) - 4;
  const highest = RAIL + 22;
  const perNewton = (scale.y(shape.freeAt) - 4 - highest - SHORTEST) / MOST_LOAD_N;
  const tail = tip - SHORTEST - load * perNewton;
  const { rear, front } = setupOf(pair.ski, 0);
  const [least, most] = pressRange(pair.ski, rear, front).map(
    station => (station - pair.ski.bootCentre) / MM,
  ) as [number, number];
  const fore = (shape.at - pair.ski.bootCentre) / MM;
  const setLoad = (benchLoadN: number) => changeConditions(t('flex.step.load'), { benchLoadN }, 'benchLoadN');
  const text = formatQuantity(load, 'force', { system }).text;
  return (
    <g>
      <line class="press-rail" x1={scale.x(pair, rear)} x2={scale.x(pair, front)} y1={RAIL} y2={RAIL} />
      <path class="press-arrow" d={`M${x},${tail}V${tip - 10}`} />
      <path class="press-head" d={`M${x},${tip}l-6,-11h12z`} />
      <Handle
        label={t('flex.loadPlace')}
        measure="stationMm"
        value={fore}
        min={Math.ceil(least)}
        max={Math.floor(most)}
        step={5}
        along="x"
        x={x}
        y={RAIL}
        invert={px => fore + (px - x) / scale.perMetre / MM}
        text={placeText(fore)}
        textSide={fore > 0.35 * most ? 'left' : 'right'}
        onInput={moveBench.press}
      />
      <Handle
        label={t('condition.load')}
        measure="force"
        value={load}
        min={0}
        max={rest === 'bench' ? Math.max(load, mostDrawn(scale, shape)) : MOST_LOAD_N}
        step={5}
        along="y"
        x={x}
        y={rest === 'bench' ? tip + 4 : tail}
        invert={px =>
          rest === 'bench'
            ? ((px - scale.y(shape.freeAt)) / (scale.perMetre * scale.times)) * shape.spring
            : (tip - SHORTEST - px) / perNewton
        }
        onInput={setLoad}
      />
      <text class="press-text halo" x={x + 14} y={rest === 'bench' ? tail + 6 : tail + 4}>
        {text}
      </text>
    </g>
  );
}

export function placeText(mm: number): string {
  const whole = Math.round(mm);
  if (whole === 0) return t('flex.place.centre');
  const { text } = formatQuantity(Math.abs(whole) * MM, 'station', { system: view.value.system });
  return t(whole > 0 ? 'flex.place.ahead' : 'flex.place.behind', { distance: text });
}
