import type { JSX } from 'preact';
import { formatQuantity, MM } from '../../../core/units/index.ts';
import { type Bendable, SUPPORT_SHARE, setupOf } from '../../answers/index.ts';
import { Handle } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';
import { frontInMm, moveBench, rearInMm } from './bench.ts';
import type { Shown, SideScale } from './side-scale.ts';

/** The flat hard table. */
export function Table({ scale, width }: { scale: SideScale; width: number }): JSX.Element {
  const hatch: string[] = [];
  for (let x = 16; x < width; x += 14) hatch.push(`M${x},${scale.ground + 3}l-8,9`);
  return (
    <g class="table-top">
      <line x1={8} x2={width - 8} y1={scale.ground + 2} y2={scale.ground + 2} />
      <path d={hatch.join('')} />
    </g>
  );
}

/** Two knife edges; the active pair's can be moved, the others stand at the same distance from their ends. */
export function Supports(props: { shown: readonly Shown[]; lead: Bendable; scale: SideScale }): JSX.Element {
  const { shown, lead, scale } = props;
  const { rear, front, length } = setupOf(lead.ski, 0);
  const foot = scale.bottom + 6;
  const post = (x: number, colour: string, main: boolean) => (
    <path
      class={main ? 'support' : 'support other'}
      d={`M${x},${scale.ground + 2}L${x - 7},${scale.ground + 15}H${x - 2}V${foot}H${x + 2}V${scale.ground + 15}H${x + 7}Z`}
      stroke={colour}
    />
  );
  const most = Math.round((SUPPORT_SHARE * length) / MM);
  const grip = (side: 'rear' | 'front', at: number, mm: number, set: (mm: number) => void) => {
    const inside = formatQuantity(mm * MM, 'station', { system: view.value.system }).text;
    const x = scale.x(lead, at);
    return (
      <Handle
        label={t('flex.supportInside', { side })}
        measure="stationMm"
        value={Math.min(mm, most)}
        min={0}
        max={most}
        step={5}
        along="x"
        x={x}
        y={foot}
        invert={px => {
          const along = (px - scale.x(lead, 0)) / scale.perMetre;
          return (side === 'rear' ? along : length - along) / MM;
        }}
        text={mm === 0 ? t('flex.atContact') : t('flex.inside', { distance: inside })}
        textSide="below"
        onInput={set}
      />
    );
  };
  return (
    <g>
      <line
        class="bench-plate"
        x1={scale.x(lead, 0) - 20}
        x2={scale.x(lead, length) + 20}
        y1={foot}
        y2={foot}
      />
      {shown
        .filter(({ pair }) => pair.id !== lead.id)
        .map(({ pair }) => {
          const own = setupOf(pair.ski, 0);
          return (
            <g key={pair.id}>
              {post(scale.x(pair, own.rear), pair.mark.colour, false)}
              {post(scale.x(pair, own.front), pair.mark.colour, false)}
            </g>
          );
        })}
      {post(scale.x(lead, rear), 'var(--ink)', true)}
      {post(scale.x(lead, front), 'var(--ink)', true)}
      {grip('rear', rear, rearInMm.value, moveBench.rear)}
      {grip('front', front, frontInMm.value, moveBench.front)}
    </g>
  );
}
