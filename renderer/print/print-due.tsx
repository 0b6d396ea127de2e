import { group } from 'd3';
import type { JSX } from 'preact';
import { agoText, allRows, day, dueText, type SquadRow } from '../answers/index.ts';
import { SQUAD_CAUTIONS } from '../help/index.ts';
import { disciplineText, project, t } from '../state/index.ts';
import { printPaper } from './paper.tsx';

/** Prints what is due of the whole squad, owner by owner, the most overdue first. */
export async function printDue(): Promise<void> {
  const rows = allRows.value
    .filter(row => row.due.due)
    .toSorted((one, other) => (one.urgency === other.urgency ? 0 : other.urgency - one.urgency));
  await printPaper(t('print.dueListName'), `due-${day.value}.pdf`, () => <DueList rows={rows} />);
}

function DueList({ rows }: { rows: readonly SquadRow[] }): JSX.Element {
  const { edgeDays, waxDays } = project.value.dueAfter;
  const byOwner = [...group(rows, row => row.owner)].sort(([one], [other]) => one.localeCompare(other));
  return (
    <>
      <header class="sheet-head">
        <h1>{t('print.dueTitle')}</h1>
        <p>
          {t('print.dueHead', { day: day.value, edgeDays, waxDays, pairs: rows.length })}
          {rows.some(row => row.pair.demo) && ` · ${t('print.dueDemo')}`}
        </p>
      </header>
      <table class="due-table">
        <thead>
          <tr>
            <th>{t('common.pair')}</th>
            <th>{t('squad.for')}</th>
            <th>{t('common.edges')}</th>
            <th>{t('squad.edgesDone')}</th>
            <th>{t('squad.waxed')}</th>
            <th>{t('print.dueColumn')}</th>
            <th>{t('print.done')}</th>
          </tr>
        </thead>
        {byOwner.map(([owner, own]) => (
          <tbody key={owner}>
            <tr class="due-owner">
              <th colSpan={7}>{owner || t('print.noOwner')}</th>
            </tr>
            {own.map(({ entry, pair, due }) => (
              <tr key={entry.id}>
                <td>{pair.name}</td>
                <td>{disciplineText(pair.discipline)}</td>
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
        {SQUAD_CAUTIONS.map(caution => (
          <li key={caution}>{t(caution)}</li>
        ))}
      </ul>
    </>
  );
}
