import type { JSX } from 'preact';
import { BINDING_CAUTION, type BindingLoadColumns, bindingLoadColumns } from '../../../core/boot/index.ts';
import { USUAL } from '../../../core/conditions/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { type PairRun, runs } from '../../answers/index.ts';
import { inWords } from '../../state/index.ts';
import { TraceFigure } from './trace-figure.tsx';
import type { Trace } from './trace-list.ts';

interface Load {
  readonly name: keyof BindingLoadColumns;
  readonly label: string;
  readonly measure: MeasureName;
  /** As a heading of the table. */
  readonly heading: string;
}

const LOADS: readonly Load[] = [
  { name: 'normal', label: 'Presses', measure: 'force', heading: 'presses the base to the boot (N)' },
  { name: 'sideways', label: 'Along the base', measure: 'force', heading: 'along the base, right + (N)' },
  { name: 'foreAft', label: 'Along the ski', measure: 'force', heading: 'along the ski, ahead + (N)' },
  { name: 'roll', label: 'Lifts right edge', measure: 'moment', heading: 'lifts the right edge + (N·m)' },
  { name: 'pitch', label: 'Lifts toe', measure: 'moment', heading: 'lifts the toe + (N·m)' },
  {
    name: 'yaw',
    label: 'Toe to the right',
    measure: 'moment',
    heading: 'turns the toe to the right + (N·m)',
  },
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

const TRACES: readonly Trace[] = LOADS.map(({ name, label, measure }) => ({
  id: name,
  label,
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
        title="Loads handed to the binding"
        description="Forces and moments that the outer ski hands to its binding over time"
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
  `Outer ski, ${formatQuantity(lead?.plan.outerShare ?? USUAL.outerShare, 'share').text} of the load, at the sole.`;

function bindingRows(shown: readonly PairRun[]): (string | number)[][] {
  const rows: (string | number)[][] = [['pair', 'time (s)', ...LOADS.map(each => each.heading)]];
  for (const run of shown) {
    const columns = loadsOf(run);
    run.track.t.forEach((time, i) => {
      const values = LOADS.map(({ name }) => columns[name][i]!);
      rows.push([run.pair.name, ...[time, ...values].map(value => Number(value.toPrecision(6)))]);
    });
  }
  return rows;
}
