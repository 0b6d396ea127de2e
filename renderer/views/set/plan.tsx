import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { Figure, Segments, type Size } from '../../kit/index.ts';
import { chosenPairs, course, t, view } from '../../state/index.ts';
import { GateGrips } from './gate-grips.tsx';
import { LimitStrip, stripHeight } from './limit-strip.tsx';
import { PlanLines, pathsOf } from './plan-lines.tsx';
import { type PlanScale, planScale } from './plan-scale.ts';
import { inView, selectedGate, trueScale } from './set-state.ts';

/** The gates from above with each chosen pair's line. */
export function Plan(): JSX.Element {
  const { gates, name, demo } = course.value;
  return (
    <Figure
      class="set-plan"
      title={name || t('set.theSet')}
      note={demo ? t('set.demoData') : t('common.gates', { count: gates.length })}
      description={t('set.planOf', {
        gates: t('common.gates', { count: gates.length }),
        pairs: chosenPairs.value.map(pair => pair.name),
      })}
      rows={lineRows}
      tools={
        <>
          <Segments
            label={t('set.gatesDrawn')}
            labelHidden
            value={inView.value}
            options={[
              { value: 0, label: t('set.allGates'), title: t('set.drawAll') },
              { value: 12, label: '12', title: t('set.drawSome', { count: 12 }) },
              { value: 6, label: '6', title: t('set.drawSome', { count: 6 }) },
            ]}
            onInput={value => {
              inView.value = value as 0 | 6 | 12;
            }}
          />
          <Segments
            label={t('set.across')}
            labelHidden
            value={trueScale.value ? 'true' : 'wide'}
            options={[
              { value: 'wide', label: t('set.stretched') },
              { value: 'true', label: t('set.true') },
            ]}
            onInput={value => {
              trueScale.value = value === 'true';
            }}
          />
        </>
      }
    >
      {size => <Drawing size={size} />}
    </Figure>
  );
}

function Drawing({ size }: { size: Size }): JSX.Element {
  const { gates } = course.value;
  const strip = stripHeight();
  const box = { left: 46, right: size.width - 8, top: 38, bottom: size.height - strip - 30 };
  const scale = planScale(gates, box, selectedGate.value, inView.value, trueScale.value);
  return (
    <g>
      <defs>
        <clipPath id="set-plan-clip">
          <rect x={box.left} y={0} width={box.right - box.left} height={size.height} />
        </clipPath>
      </defs>
      <Downhill scale={scale} left={box.left} right={box.right} bottom={box.bottom} />
      <PlanLines scale={scale} />
      <GateGrips scale={scale} />
      <LimitStrip scale={scale} top={size.height - strip} />
    </g>
  );
}

/** Distance down the hill along the top, the fall line, and which way the skier's right is. */
function Downhill(props: { scale: PlanScale; left: number; right: number; bottom: number }): JSX.Element {
  const { scale, left, right, bottom } = props;
  const { system } = view.value;
  const unit = system === 'metric' ? 1 : 0.3048;
  const step =
    unit * ([5, 10, 20, 25, 50, 100, 200, 500].find(each => each * unit * scale.perMetre >= 62) ?? 1000);
  const first = Math.ceil(scale.invertDown(left) / step);
  const last = Math.floor(scale.invertDown(right - 20) / step);
  const marks = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
  const middle = scale.across(0);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="axes" aria-hidden="true">
      {marks.map(at => (
        <g key={at} transform={`translate(${scale.down(at)},0)`}>
          <line class="grid" y1={22} y2={bottom} />
          <text y={14} text-anchor="middle">
            {formatQuantity(at, 'distance', { system, decimals: 0 }).text}
          </text>
        </g>
      ))}
      <line class="fall-line" x1={left} x2={right} y1={middle} y2={middle} />
      <path class="fall-head" d={`M${right},${middle}l-9,-4v8z`} />
      <text class="halo" x={right} y={bottom + 20} text-anchor="end">
        {t('set.fallLine')}
      </text>
      <path class="fall-line solid" d={`M8,${middle - 40}v78`} />
      <path class="fall-head" d={`M8,${middle + 44}l-4,-9h8z`} />
      <text transform={`translate(20,${middle})rotate(90)`} text-anchor="middle">
        {t('set.skiersRight')}
      </text>
      <text class="halo" x={left} y={bottom + 20}>
        {scale.times === 1 ? t('set.trueToScale') : t('set.acrossTimes', { times: scale.times })}
      </text>
    </g>
  );
}

function lineRows(): (string | number)[][] {
  const rows: (string | number)[][] = [
    [t('set.pair'), t('set.csv.of'), t('set.csv.across'), t('set.csv.down')],
  ];
  for (const { pair, x, y, of } of pathsOf()) {
    for (let i = 0; i < x.length; i++)
      rows.push([pair.name, t(of === 'skis' ? 'set.skis' : 'set.mass'), x[i]!.toFixed(3), y[i]!.toFixed(3)]);
  }
  return rows;
}
