import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { getHost } from '../../host/index.ts';
import { toCsv } from '../../kit/index.ts';
import { type ChosenPair, report } from '../../state/index.ts';
import { type Field, field } from './bench.ts';
import { type LayupStiffness, STARTING_LAYUP } from './layup-edits.ts';
import { layupRows } from './layup-rows.ts';
import { LayupSectionFigures } from './layup-section.tsx';
import { LayupSides } from './layup-sides.tsx';
import { LayupTable } from './layup-table.tsx';
import { setStiffness } from './stiffness-edits.ts';

/** The layers a stiffness is worked out from, base first, and what they amount to at a section. */
export function LayupSheet({ active }: { active: ChosenPair }): JSX.Element {
  const problem = useSignal<string | null>(null);
  const { bending, torsion } = active.pair;
  const which: Field =
    active.pair[field.value]?.kind === 'layup'
      ? field.value
      : other(bending?.kind === 'layup', torsion?.kind === 'layup');
  const layup = active.pair[which];
  if (layup?.kind !== 'layup') return <NoLayers active={active} />;
  const si = active.ski[which];
  const locked = active.readOnly !== undefined;
  const otherField: Field = which === 'bending' ? 'torsion' : 'bending';
  const shared = JSON.stringify(active.pair[otherField]) === JSON.stringify(layup);
  const change = (next: LayupStiffness, key: string | null = null) => {
    setStiffness(active.id, which, next, key && `${active.id} ${which} ${key}`);
  };
  return (
    <section class="flex-panel layup-sheet" aria-label="Layers">
      <div class="figure-head">
        <h2>
          {active.mark.letter} {active.name}: layers behind {which === 'bending' ? 'EI' : 'GJ'}
        </h2>
        <div class="figure-tools">
          {!locked && !shared && (
            <button type="button" onClick={() => setStiffness(active.id, otherField, layup)}>
              Use them for {otherField === 'torsion' ? 'GJ' : 'EI'} too
            </button>
          )}
          <button type="button" onClick={() => void saveRows('layers.csv', layupRows(layup))}>
            Table, CSV
          </button>
        </div>
      </div>
      <LayupTable active={active} layup={layup} change={change} problem={problem} />
      <LayupSides
        pair={active.pair}
        layup={layup}
        locked={locked}
        say={text => {
          problem.value = text;
        }}
        change={change}
      />
      {problem.value && (
        <p class="problem" role="alert">
          {problem.value}
        </p>
      )}
      {si?.kind === 'layup' && <LayupSectionFigures ski={active.ski} layup={si.layup} />}
    </section>
  );
}

async function saveRows(name: string, rows: ReturnType<typeof layupRows>): Promise<void> {
  try {
    if (await getHost().exportFile(name, 'text/csv', toCsv(rows))) report(`${name} saved`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}

const other = (bends: boolean, twists: boolean): Field => (!bends && twists ? 'torsion' : 'bending');

function NoLayers({ active }: { active: ChosenPair }): JSX.Element {
  return (
    <div class="missing-bending">
      <p>
        The stiffness of <strong>{active.name}</strong> is not worked out from layers. Starting from a layup
        replaces its bending stiffness by that of a plain section, to be changed layer by layer; undo brings
        the old one back.
      </p>
      {active.readOnly === undefined && (
        <p>
          <button type="button" onClick={() => setStiffness(active.id, 'bending', STARTING_LAYUP)}>
            Start from a plain layup
          </button>
        </p>
      )}
    </div>
  );
}
