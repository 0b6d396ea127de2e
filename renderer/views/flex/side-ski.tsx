import type { JSX } from 'preact';
import { overhang } from '../../answers/index.ts';
import type { Shown, SideScale } from './side-scale.ts';

/** One ski from the side: its base line pressed, and unpressed as a fine line where asked for. */
export function SideSki(props: {
  shown: Shown;
  scale: SideScale;
  active: boolean;
  withFree: boolean;
}): JSX.Element {
  const { shown, scale, active } = props;
  const { pair, shape } = shown;
  const { colour, dash } = pair.mark;
  const path = (heights: Float64Array) => {
    const points: string[] = [];
    for (let i = 0; i < shape.x.length; i++) {
      points.push(`${scale.x(pair, shape.x[i]).toFixed(2)},${scale.y(heights[i]).toFixed(2)}`);
    }
    return `M${points.join('L')}`;
  };
  return (
    <g class={active ? 'side-ski active' : 'side-ski'}>
      {props.withFree && <path class="side-free" d={path(shape.free)} stroke={colour} />}
      {ends(shown, scale).map(end => (
        <path key={end} class="side-end" d={end} stroke={colour} />
      ))}
      <path class="side-base" d={path(shape.pressed)} stroke={colour} stroke-dasharray={dash} />
    </g>
  );
}

/** Tail and shovel beyond the contact points: along the slope there, the shovel turned up. Not measured. */
function ends({ pair, shape }: Shown, scale: SideScale): [rear: string, front: string] {
  const { rear, front } = overhang(pair);
  const last = shape.x.length - 1;
  const end = (at: number, next: number, beyond: number, rise: number) => {
    const x = scale.x(pair, shape.x[at]);
    const y = scale.y(shape.pressed[at]);
    const slope =
      (scale.y(shape.pressed[at]) - scale.y(shape.pressed[next])) / (x - scale.x(pair, shape.x[next]));
    const run = beyond * scale.perMetre;
    const up = Math.abs(beyond) * scale.perMetre * rise;
    const half = `${(x + run * 0.5).toFixed(1)},${(y + slope * run * 0.5).toFixed(1)}`;
    return `M${x.toFixed(1)},${y.toFixed(1)}Q${half} ${(x + run).toFixed(1)},${(y + slope * run - up).toFixed(1)}`;
  };
  return [end(0, 1, -rear, 0.12), end(last, last - 1, front, 0.35)];
}
