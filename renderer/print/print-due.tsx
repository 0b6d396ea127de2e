import { group } from 'd3';
import type { JSX } from 'preact';
import { agoText, allRows, day, dueText, type SquadRow } from '../answers/index.ts';
import { SQUAD_CAUTIONS } from '../help/index.ts';
import { project } from '../state/index.ts';
import { printPaper } from './paper.tsx';

/** Prints what is due of the whole squad, owner by owner, the most overdue first. */
export async function printDue(): Promise<void> {
  const rows = allRows.value
    .filter(row => row.due.due)
    .toSorted((one, other) => (one.urgency === other.urgency ? 0 : other.urgency - one.urgency));
  await printPaper('The list of what is due', `due-${day.value}.pdf`, () => <DueList rows={rows} />);
}

function DueList({ rows }: { rows: readonly SquadRow[] }): JSX.Element {
  const { edgeDays, waxDays } = project.value.dueAfter;
  const byOwner = [...group(rows, row => row.owner)].sort(([one], [other]) => one.localeCompare(other));
  return (
    <>
      <header class="sheet-head">
        <h1>What is due</h1>
        <p>
          {day.value} · edges after {edgeDays} days, wax after {waxDays} days · {rows.length} pairs
          {rows.some(row => row.pair.demo) && ' · with demo data: those pairs are invented'}
        </p>
      </header>
      <table class="due-table">
        <thead>
          <tr>
            <th>Pair</th>
            <th>For</th>
            <th>Edges</th>
            <th>Edges done</th>
            <th>Waxed</th>
            <th>Due</th>
            <th>Done</th>
          </tr>
        </thead>
        {byOwner.map(([owner, own]) => (
          <tbody key={owner}>
            <tr class="due-owner">
              <th colSpan={7}>{owner || 'No owner given'}</th>
            </tr>
            {own.map(({ entry, pair, due }) => (
              <tr key={entry.id}>
                <td>{pair.name}</td>
                <td>{pair.discipline ?? 'other'}</td>
                <td>
                  {pair.edges?.sideAngleDeg ?? '–'}° / {pair.edges?.baseBevelDeg ?? '–'}°
                </td>
                <td>{agoText(due.edge)}</td>
                <td>{agoText(due.wax)}</td>
                <td>{dueText(due)}</td>
                <td>☐</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      <ul class="sheet-cautions">
        {SQUAD_CAUTIONS.map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}
