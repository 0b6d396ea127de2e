import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { allRows } from '../answers/index.ts';
import { openFiles } from '../files/index.ts';
import { Empty } from '../kit/index.ts';
import { moveAmongRows, useGrowing } from '../rack/index.ts';
import type { SortKey } from './arrange.ts';
import { importDemo } from './import-demo.ts';
import { arrangement, changeArrangement, selectedRow, shownRows } from './squad-state.ts';
import { SquadTableRow } from './table-row.tsx';

const COLUMNS: readonly (readonly [key: SortKey | null, label: string, className?: string])[] = [
  ['name', 'Pair'],
  ['owner', 'Owner'],
  ['discipline', 'For'],
  ['length', 'Length', 'number'],
  ['radius', 'Radius', 'number'],
  [null, 'Edges', 'number'],
  ['edge', 'Edges done'],
  ['wax', 'Waxed'],
  [null, 'Look again', 'look'],
];

/** The squad's pairs, a row each. Arrow keys go from pair to pair; see `SquadTableRow` for the other keys. */
export function SquadTable(): JSX.Element {
  const rows = shownRows.value;
  const selected = selectedRow.value?.entry.id;
  const inHand = rows.findIndex(row => row.entry.id === selected);
  const { shown, end, drawAll } = useGrowing(rows.length, inHand);
  const body = useRef<HTMLTableSectionElement>(null);
  const order = arrangement.value;
  // The pair whose log stands at the right is kept in sight, however the table is sorted or filtered.
  useEffect(() => {
    body.current?.querySelector('.selected')?.scrollIntoView({ block: 'nearest' });
  }, [selected, order]);
  if (allRows.value.length === 0) {
    return (
      <Empty>
        <p>No pairs yet. Import a technician’s sheet: one pair a row, with name, length and widths.</p>
        <button type="button" onClick={() => void openFiles('sheet')}>
          Import a sheet…
        </button>
        <button type="button" onClick={importDemo}>
          Demo squad
        </button>
      </Empty>
    );
  }
  if (rows.length === 0) {
    return <Empty>No pair matches. Take a filter away, or try part of a name or an owner.</Empty>;
  }
  const focusable = inHand >= 0 ? selected : rows[0]!.entry.id;
  return (
    <div class="squad-scroll">
      <table class="squad-table">
        <caption class="sr-only">
          Pairs of the squad. Arrow keys go from pair to pair, Space ticks a pair, Enter edits it, Delete
          removes it.
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="sr-only">Chosen</span>
            </th>
            {COLUMNS.map(([key, label, className]) => (
              <Heading key={label} sortKey={key} label={label} className={className} />
            ))}
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={event => moveAmongRows(event, 'tr', '.squad-name', drawAll)}>
          {rows.slice(0, shown).map(row => (
            <SquadTableRow
              key={row.entry.id}
              row={row}
              selected={row.entry.id === selected}
              focusable={row.entry.id === focusable}
            />
          ))}
        </tbody>
      </table>
      {shown < rows.length && (
        <p class="rack-more" ref={end}>
          {shown} of {rows.length} shown; scroll on or search
        </p>
      )}
    </div>
  );
}

function Heading(props: { sortKey: SortKey | null; label: string; className?: string }): JSX.Element {
  const { sortKey, label, className } = props;
  const { sort, down } = arrangement.value;
  if (sortKey === null) {
    return (
      <th scope="col" class={className}>
        {label}
      </th>
    );
  }
  const sorted = sort === sortKey;
  // The third press goes back to the order of the rack.
  const press = () =>
    changeArrangement(
      !sorted ? { sort: sortKey, down: false } : !down ? { down: true } : { sort: 'rack', down: false },
    );
  return (
    <th scope="col" class={className} aria-sort={sorted ? (down ? 'descending' : 'ascending') : 'none'}>
      <button type="button" class="bare" onClick={press}>
        {label}
        <span aria-hidden="true">{sorted ? (down ? ' ↓' : ' ↑') : ''}</span>
      </button>
    </th>
  );
}
