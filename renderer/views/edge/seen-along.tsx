import type { JSX } from 'preact';
import { pressedHeight } from '../../../core/carve/index.ts';
import { DEGREE, formatQuantity, MM } from '../../../core/units/index.ts';
import { asked, edgeOf, grooveOf } from '../../answers/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { type ChosenPair, ski, t, view } from '../../state/index.ts';

const BODY = { tail: 0.008, boot: 0.018, tip: 0.008 };

/** One cut across the ski, m and rad, seen from behind in a turn to the right. */
interface Cut {
  readonly name: keyof typeof BODY;
  readonly halfWidth: number;
  readonly height: number;
  readonly angle: number;
  readonly thickness: number;
}

/** Cuts at tail, boot and tip: as solved, or pressed wholly onto rigid snow for want of a stiffness. */
function cutsOf(pair: ChosenPair): Cut[] {
  const edge = edgeOf(pair.pair);
  const solved = grooveOf(pair);
  const { bootCentre } = ski(pair.pair);
  const { edgeAngle } = asked.value;
  const at = (name: keyof typeof BODY, x: number): Cut => {
    const halfWidth = edge.halfWidth(x);
    if (!solved) {
      const lift = edge.halfWidth(0) * Math.tan(edgeAngle);
      const height = lift + pressedHeight(edge, edgeAngle, x);
      return { name, halfWidth, height, angle: edgeAngle, thickness: BODY[name] };
    }
    let node = 0;
    while (node < solved.x.length - 1 && solved.x[node]! < x - 1e-9) node++;
    return {
      name,
      halfWidth,
      height: solved.height[node]!,
      angle: solved.localEdgeAngle[node]!,
      thickness: BODY[name],
    };
  };
  return [at('tip', edge.length), at('tail', 0), at('boot', bootCentre)];
}

/** The ski seen along its length: how far each part is tipped, and how deep its edge is in the snow. */
export function SeenAlong({ pair }: { pair: ChosenPair }): JSX.Element {
  const cuts = cutsOf(pair);
  return (
    <Figure
      title={t('edge.seenAlong.title')}
      note={t('edge.seenAlong.note')}
      description={t('edge.seenAlong.description', { name: pair.name })}
      rows={() => [
        [t('edge.column.cut'), t('edge.column.edgeAngle'), t('edge.column.depth')],
        ...cuts.map(cut => [
          t(`edge.cut.${cut.name}`),
          (cut.angle / DEGREE).toFixed(2),
          (depthOf(cut) / MM).toFixed(3),
        ]),
      ]}
    >
      {size => <Cuts pair={pair} cuts={cuts} size={size} />}
    </Figure>
  );
}

/** Depth of the edge below the snow surface, m. */
function depthOf({ halfWidth, height, angle }: Cut): number {
  return halfWidth * Math.sin(angle) - height * Math.cos(asked.value.edgeAngle);
}

/** Corners of a cut in the plane across the track, m: to the right, and up from the snow surface. */
function corners(cut: Cut): [x: number, y: number][] {
  const sin = Math.sin(cut.angle);
  const cos = Math.cos(cut.angle);
  const edgeX = cut.halfWidth * cos + cut.height * Math.sin(asked.value.edgeAngle);
  const edgeY = -depthOf(cut);
  const farX = edgeX - 2 * cut.halfWidth * cos;
  const farY = edgeY + 2 * cut.halfWidth * sin;
  const up: [number, number] = [cut.thickness * sin, cut.thickness * cos];
  return [
    [edgeX, edgeY],
    [farX, farY],
    [farX + up[0], farY + up[1]],
    [edgeX + up[0], edgeY + up[1]],
  ];
}

function Cuts({ pair, cuts, size }: { pair: ChosenPair; cuts: readonly Cut[]; size: Size }): JSX.Element {
  const all = cuts.flatMap(corners);
  const left = Math.min(...all.map(([x]) => x));
  const right = Math.max(...all.map(([x]) => x));
  const top = Math.max(...all.map(([, y]) => y));
  const bottom = Math.min(-0.012, ...all.map(([, y]) => y));
  const perMetre = Math.min((size.width - 150) / (right - left), (size.height - 36) / (top - bottom));
  const x = (metres: number) => size.width / 2 - 40 + (metres - (left + right) / 2) * perMetre;
  const y = (metres: number) => 12 + (top - metres) * perMetre;
  const path = (points: readonly [number, number][]) =>
    `M${points.map(([px, py]) => `${x(px).toFixed(1)},${y(py).toFixed(1)}`).join('L')}Z`;
  const boot = cuts.find(cut => cut.name === 'boot')!;
  const [corner, far] = corners(boot) as [[number, number], [number, number]];
  // Where the base of the boot's cut comes out of the snow: the groove's other lip.
  const out = depthOf(boot) > 0 ? depthOf(boot) / Math.max(1e-6, far[1] - corner[1]) : 0;
  const lip: [number, number] = [corner[0] + Math.min(1, out) * (far[0] - corner[0]), 0];
  const { system } = view.value;
  const text = (cut: Cut) =>
    `${formatQuantity(cut.angle, 'angle', { system }).text}, ${
      formatQuantity(Math.max(0, depthOf(cut)), 'depth', { system }).text
    }`;
  return (
    <g>
      <rect class="snow-body" x={0} y={y(0)} width={size.width} height={Math.max(0, size.height - y(0))} />
      {depthOf(boot) > 0 && <path class="snow-cut" d={path([lip, corner, [corner[0], 0]])} />}
      <line class="snow-line" x1={0} x2={size.width} y1={y(0)} y2={y(0)} />
      {cuts.map(cut => (
        <path
          key={cut.name}
          class={cut.name === 'boot' ? 'ski-cut boot' : 'ski-cut'}
          d={path(corners(cut))}
          stroke={pair.mark.colour}
        />
      ))}
      {(['tip', 'boot', 'tail'] as const).map((name, row) => {
        const cut = cuts.find(each => each.name === name)!;
        return (
          <text key={name} class="halo" x={size.width - 6} y={18 + row * 19} text-anchor="end">
            {t('edge.cutIs', { cut: t(`edge.cut.${name}`), text: text(cut) })}
          </text>
        );
      })}
      <text class="halo" x={6} y={y(0) + 16}>
        {t('edge.seenAlong.snow')}
      </text>
    </g>
  );
}
