import type { JSX } from 'preact';
import { edgeLateral, pressedHeight } from '../../../core/carve/index.ts';
import { MM } from '../../../core/units/index.ts';
import { asked, edgeOf, grooveOf, turnOf } from '../../answers/index.ts';
import { Figure, PairBadge, type Size, spread } from '../../kit/index.ts';
import { type ChosenPair, ski, t } from '../../state/index.ts';

/** A pair's edge in the snow plane, m: along the ski from the boot centre, and sideways towards the turn. */
interface EdgeTrack {
  readonly pair: ChosenPair;
  readonly along: Float64Array;
  readonly aside: Float64Array;
  readonly pressed: (at: number) => boolean;
}

const SAMPLES = 61;

/** The edge turned so that it points along the track under the boot. */
function trackOf(pair: ChosenPair): EdgeTrack {
  const { bootCentre } = ski(pair.pair);
  const solved = grooveOf(pair);
  const edge = edgeOf(pair.pair);
  const x = solved
    ? solved.x
    : Float64Array.from({ length: SAMPLES }, (_, i) => (edge.length * i) / (SAMPLES - 1));
  const { edgeAngle } = asked.value;
  const lateral = solved
    ? solved.lateral
    : x.map(each => edgeLateral(pressedHeight(edge, edgeAngle, each), edge.halfWidth(each), edgeAngle));
  let boot = 1;
  while (boot < x.length - 2 && x[boot]! < bootCentre) boot++;
  const slope = (lateral[boot + 1]! - lateral[boot - 1]!) / (x[boot + 1]! - x[boot - 1]!);
  return {
    pair,
    along: x.map(each => each - x[boot]!),
    aside: lateral.map((each, i) => each - lateral[boot]! - slope * (x[i]! - x[boot]!)),
    pressed: at => (solved ? solved.lineLoad[at]! > 0 : true),
  };
}

/** Edges from above on the arcs they carve: strong where they press, thin where they have lifted. */
export function FromAbove(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
}): JSX.Element {
  const tracks = props.pairs.map(trackOf);
  return (
    <Figure
      title={t('common.fromAbove')}
      note={t('edge.boldPressed')}
      description={t('edge.edgesFromAbove', { pairs: props.pairs.map(pair => pair.name) })}
      rows={() => [
        [
          t('common.columnPair'),
          t('common.columnFromBootCentre'),
          t('edge.column.sideways'),
          t('edge.column.pressed'),
        ],
        ...tracks.flatMap(({ pair, along, aside, pressed }) =>
          Array.from(along, (x, at) => [
            pair.name,
            (x / MM).toFixed(1),
            (aside[at]! / MM).toFixed(3),
            t(pressed(at) ? 'edge.yes' : 'edge.no'),
          ]),
        ),
      ]}
    >
      {size => <Tracks tracks={tracks} size={size} />}
    </Figure>
  );
}

function Tracks({ tracks, size }: { tracks: readonly EdgeTrack[]; size: Size }): JSX.Element {
  const behind = Math.max(...tracks.map(each => -each.along[0]!));
  const ahead = Math.max(...tracks.map(each => each.along.at(-1)!));
  const most = Math.max(1e-3, ...tracks.map(each => Math.max(...each.aside)));
  const perMetre = (size.width - 60) / (behind + ahead);
  const room = (size.height - 56) / most;
  const steps = [1, 2, 3, 5, 10, 20, 30, 50];
  const enlarged = steps.filter(step => step * perMetre <= room).at(-1) ?? 1;
  const x = (along: number) => 12 + (along + behind) * perMetre;
  const y = (aside: number) => size.height - 30 - aside * perMetre * enlarged;
  const ends = tracks.map(each => y(each.aside.at(-1)!));
  const places = spread(ends, 20, 12, size.height - 24);
  return (
    <g>
      {tracks.map((track, at) => (
        <g key={track.pair.id}>
          <ArcOf track={track} x={x} y={y} />
          <EdgeLine track={track} x={x} y={y} />
          <g transform={`translate(${size.width - 36},${places[at]})`}>
            <PairBadge mark={track.pair.mark} svg />
          </g>
        </g>
      ))}
      <path class="boot-mark" d={`M${x(0)},${y(0) - 6}v12M${x(0) - 6},${y(0)}h12`} />
      <text x={x(0)} y={size.height - 8} text-anchor="middle">
        {t('common.bootCentre')}
      </text>
      <text x={12} y={14}>
        {size.width < 280 ? `sideways ×${enlarged}` : t('edge.sidewaysDrawn', { times: enlarged })}
      </text>
    </g>
  );
}

interface Scaled {
  readonly track: EdgeTrack;
  x(along: number): number;
  y(aside: number): number;
}

function ArcOf({ track, x, y }: Scaled): JSX.Element | null {
  const { radius } = turnOf(track.pair);
  if (radius === null) return null;
  const points = Array.from(track.along, along => {
    const inside = Math.max(0, radius * radius - along * along);
    return `${x(along).toFixed(1)},${y(radius - Math.sqrt(inside)).toFixed(1)}`;
  });
  return (
    <path
      class="line context"
      d={`M${points.join('L')}`}
      stroke={track.pair.mark.colour}
      stroke-dasharray="2 4"
    />
  );
}

function EdgeLine({ track, x, y }: Scaled): JSX.Element {
  const { along, aside, pair, pressed } = track;
  const point = (at: number) => `${x(along[at]!).toFixed(1)},${y(aside[at]!).toFixed(1)}`;
  let strong = '';
  let thin = '';
  for (let at = 1; at < along.length; at++) {
    const part = `M${point(at - 1)}L${point(at)}`;
    if (pressed(at - 1) && pressed(at)) strong += part;
    else thin += part;
  }
  return (
    <g>
      <path class="edge-lifted" d={thin} stroke={pair.mark.colour} />
      <path class="edge-pressed" d={strong} stroke={pair.mark.colour} />
    </g>
  );
}
