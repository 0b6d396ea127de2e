import type { JSX } from 'preact';
import { formatQuantity, type MeasureName, shownAs } from '../format/index.ts';
import { CAUTIONS } from '../help/cautions.ts';
import { getHost } from '../host/index.ts';
import { activePair, report, view } from '../state/index.ts';
import { fileStem } from './files.ts';
import { textOf } from './pair-draft.ts';
import { FIELD_GROUPS } from './pair-fields.ts';
import { sidecutOf } from './radius.ts';

/** Makes a PDF of the active pair's sheet: the page's print style shows nothing else. */
export async function printSheet(name: string): Promise<void> {
  try {
    if (await getHost().printPdf(`${fileStem(name)}.pdf`)) report(`Sheet of ${name} made`);
  } catch (error) {
    report(`The sheet of ${name} could not be made: ${(error as Error).message}`, 'error');
  }
}

const absent = (otherwise: string | undefined) =>
  otherwise === undefined || otherwise === 'not given' ? 'not given' : `${otherwise} (none given)`;

/** The active pair on one page: what was measured, what follows from it, notes. Seen on paper only. */
export function PairSheet(): JSX.Element | null {
  const active = activePair.value;
  if (!active) return null;
  const { pair } = active;
  const { system } = view.value;
  const cut = sidecutOf(pair);
  const derived: readonly (readonly [string, number, MeasureName, number?])[] = [
    ['Sidecut radius', cut.radius, 'radius', cut.radiusUncertainty],
    ['Exact circle through three points', cut.circleRadius, 'radius'],
    ['Sidecut depth', cut.depth, 'width'],
    ['True waist from rear contact', cut.waistStation, 'station'],
    ['Taper of either edge', cut.taper, 'angle'],
  ];
  return (
    <article class="pair-sheet" aria-hidden="true">
      <h1>{pair.name}</h1>
      <p>
        {pair.discipline ?? 'other'}
        {pair.demo && ', demo data: this pair is invented'}
      </p>
      {FIELD_GROUPS.map(group => (
        <table key={group.title}>
          <caption>{group.title}</caption>
          <tbody>
            {group.fields.map(field => {
              const text = textOf(pair, field, system);
              return (
                <tr key={field.field}>
                  <td>{field.label}</td>
                  <td>{text ? `${text} ${shownAs(field.measure, system).unit}` : absent(field.otherwise)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      ))}
      <table>
        <caption>What follows from the shape</caption>
        <tbody>
          {derived.map(([label, value, measure, uncertainty]) => (
            <tr key={label}>
              <td>{label}</td>
              <td>{formatQuantity(value, measure, { system, uncertainty }).text}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {pair.notes && <p>{pair.notes}</p>}
      <ul>
        {CAUTIONS.map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </article>
  );
}
