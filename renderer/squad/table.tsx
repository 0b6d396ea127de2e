import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { PlainKey } from '../../core/language/index.ts';
import { allRows } from '../answers/index.ts';
import { openFiles } from '../files/index.ts';
import { Empty } from '../kit/index.ts';
import { moveAmongRows, useGrowing } from '../rack/index.ts';
import { t } from '../state/index.ts';
import type { SortKey } from './arrange.ts';
import { importDemo } from './import-demo.ts';
import { arrangement, changeArrangement, selectedRow, shownRows } from './squad-state.ts';
import { SquadTableRow } from './table-row.tsx';

const COLUMNS: readonly (readonly [key: SortKey | null, label: PlainKey, className?: string])[] = [
  ['name', 'common.pair'],
  ['owner', 'common.owner'],
  ['discipline', 'squad.for'],
  ['length', 'common.length', 'number'],
  ['radius', 'common.radius', 'number'],
  [null, 'common.edges', 'number'],
  ['edge', 'squad.edgesDone'],
  ['wax', 'squad.waxed'],
  [null, 'squad.lookAgain', 'look'],
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
        <p>{t('squad.empty')}</p>
        <button type="button" onClick={() => void openFiles('sheet')}>
          {t('squad.importSheet')}
        </button>
        <button type="button" onClick={importDemo}>
          {t('squad.demo')}
        </button>
      </Empty>
    );
  }
  if (rows.length === 0) {
    return <Empty>{t('squad.noMatch')}</Empty>;
  }
  const focusable = inHand >= 0 ? selected : rows[0]!.entry.id;
  return (
    <div class="squad-scroll">
      <table class="squad-table">
        <caption class="sr-only">{t('squad.tableCaption')}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="sr-only">{t('squad.chosen')}</span>
            </th>
            {COLUMNS.map(([key, label, className]) => (
              <Heading key={label} sortKey={key} label={t(label)} className={className} />
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
          {t('rack.shownOf', { shown, count: rows.length })}
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
