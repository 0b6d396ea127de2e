import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import {
  byLatest,
  checkOf,
  foundText,
  limitedText,
  limitText,
  TAKEN_AS,
  tuneText,
} from '../answers/index.ts';
import { CAUTIONS } from '../help/index.ts';
import { ownerOf, PAIR_MARKS, project, ski, tunesOf, view } from '../state/index.ts';
import { OutlineOnPaper, RadiusOnPaper, StiffnessOnPaper } from './drawings.tsx';
import { type ReadingGroup, readingGroups } from './sheet-readings.ts';

const MOST_TUNES = 6;

/** A pair on one page: outline, readings with uncertainties, stiffness, radius, rules, tune log, cautions. */
export function PairSheet({ id }: { id: string }): JSX.Element | null {
  const entry = project.value.rack.find(each => each.id === id);
  if (!entry) return null;
  const { pair } = entry;
  const { system } = view.value;
  const owner = ownerOf(pair);
  const groups = readingGroups(pair, system);
  const drawn = { id, name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[0]!, active: true };
  return (
    <>
      <header class="sheet-head">
        <h1>{pair.name}</h1>
        <p>
          {[
            owner && `of ${owner}`,
            pair.discipline ?? 'other',
            pair.demo && 'demo data: this pair is invented',
          ]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </header>
      <OutlineOnPaper pair={drawn} />
      <div class="sheet-columns">
        <div>{groups.slice(0, 3).map(Group)}</div>
        <div>{groups.slice(3).map(Group)}</div>
      </div>
      <div class="sheet-drawings">
        <StiffnessOnPaper pair={drawn} />
        <RadiusOnPaper pair={drawn} />
      </div>
      <Rules pair={pair} />
      <Tunes pair={pair} />
      {pair.notes && (
        <section>
          <h2>Notes</h2>
          <p class="sheet-notes">{pair.notes}</p>
        </section>
      )}
      <p class="sheet-cautions">
        ± is one standard uncertainty, taken as usual in a ski room: a tape to 1 mm, a caliper to 0.25 mm,
        stiffness to {TAKEN_AS.stiffness * 100} %, mass to {TAKEN_AS.massKg * 1000} g, edges to{' '}
        {TAKEN_AS.angleDeg}°.
      </p>
      <ul class="sheet-cautions">
        {CAUTIONS.slice(0, 4).map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

function Group({ title, rows }: ReadingGroup): JSX.Element {
  return (
    <table key={title}>
      <caption>{title}</caption>
      <tbody>
        {rows.map(([label, value]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Every limit of the edition in use, what was found and the verdict. */
function Rules({ pair }: { pair: Pair }): JSX.Element {
  const { system } = view.value;
  const check = checkOf(pair);
  return (
    <table class="sheet-wide">
      <caption>
        Rule check, {check.discipline}, {check.category}, {check.edition}: {check.verdict}
      </caption>
      <tbody>
        {check.items.map(item => (
          <tr key={`${item.rule} ${item.limit}`}>
            <th scope="row">{limitedText(item)}</th>
            <td>{limitText(item, system)}</td>
            <td>{foundText(item, system)}</td>
            <td>{item.verdict}</td>
            <td>limit {item.status}</td>
          </tr>
        ))}
        {check.items.length === 0 && (
          <tr>
            <td>This edition holds no limits for this discipline.</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

function Tunes({ pair }: { pair: Pair }): JSX.Element {
  const tunes = byLatest(tunesOf(project.value.tuneLog, pair));
  const more = tunes.length - MOST_TUNES;
  return (
    <table class="sheet-wide">
      <caption>Tune log{more > 0 && `, the last ${MOST_TUNES} of ${tunes.length}`}</caption>
      <tbody>
        {tunes.slice(0, MOST_TUNES).map(tune => (
          <tr key={`${tune.date} ${tuneText(tune)}`}>
            <th scope="row">{tune.date}</th>
            <td>{tuneText(tune) || 'no details'}</td>
          </tr>
        ))}
        {tunes.length === 0 && (
          <tr>
            <td>Nothing logged.</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}
