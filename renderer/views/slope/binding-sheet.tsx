import type { JSX } from 'preact';
import { BINDING_CAUTION, type BindingLoadColumns, bindingLoadColumns } from '../../../core/boot/index.ts';
import { USUAL } from '../../../core/conditions/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { type PairRun, runs } from '../../answers/index.ts';
import { inWords, t } from '../../state/index.ts';
import { TraceFigure } from './trace-figure.tsx';
import type { Trace } from './trace-list.ts';

interface Load {
  readonly name: keyof BindingLoadColumns;
  readonly measure: MeasureName;
}

const LOADS: readonly Load[] = [
  { name: 'normal', measure: 'force' },
  { name: 'sideways', measure: 'force' },
  { name: 'foreAft', measure: 'force' },
  { name: 'roll', measure: 'moment' },
  { name: 'pitch', measure: 'moment' },
  { name: 'yaw', measure: 'moment' },
];

const known = new WeakMap<PairRun, BindingLoadColumns>();

/** What the outer ski hands to its binding in every row, at the sole. */
export function loadsOf(run: PairRun): BindingLoadColumns {
  let columns = known.get(run);
  if (!columns) {
    const { waistWidth, standingHeight } = run.pair.ski;
    const { load, lean, edge } = run.track;
    columns = bindingLoadColumns(
      { load, lean, edgeAngle: edge },
      { height: standingHeight, halfWaist: waistWidth / 2, friction: run.plan.friction },
      run.plan.outerShare,
    );
    known.set(run, columns);
  }
  return columns;
}

const TRACES: readonly Trace[] = LOADS.map(({ name, measure }) => ({
  id: name,
  label: `slope.binding.${name}` as const,
  measure,
  zero: true,
  values: (_, run) => loadsOf(run!)[name],
}));

/** The loads through the run, with what may never be made of them. */
export function BindingSheet(): JSX.Element {
  const shown = runs.value.runs;
  return (
    <>
      <TraceFigure
        title={t('slope.bindingTitle')}
        description={t('slope.bindingDescription')}
        note={shareNote(shown[0])}
        traces={TRACES}
        rows={() => bindingRows(shown)}
      />
      <p class="binding-caution" role="note">
        {inWords(BINDING_CAUTION)}
      </p>
    </>
  );
}

const shareNote = (lead: PairRun | undefined) =>
  t('slope.bindingNote', { share: formatQuantity(lead?.plan.outerShare ?? USUAL.outerShare, 'share').text });

function bindingRows(shown: readonly PairRun[]): (string | number)[][] {
  const rows: (string | number)[][] = [
    [
      t('common.columnPair'),
      t('slope.column.time'),
      ...LOADS.map(({ name }) => t(`slope.bindingColumn.${name}`)),
    ],
  ];
  for (const run of shown) {
    const columns = loadsOf(run);
    run.track.t.forEach((time, i) => {
      const values = LOADS.map(({ name }) => columns[name][i]!);
      rows.push([run.pair.name, ...[time, ...values].map(value => Number(value.toPrecision(6)))]);
    });
  }
  return rows;
}
