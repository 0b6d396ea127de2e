import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import { editionText } from '../../core/rules/index.ts';
import { sizeOf } from '../../core/units/index.ts';

import {
  byLatest,
  checkOf,
  foundText,
  limitedText,
  limitText,
  statusText,
  TAKEN_AS,
  tuneText,
  verdictText,
} from '../answers/index.ts';
import { CAUTIONS } from '../help/index.ts';
import { disciplineText, ownerOf, PAIR_MARKS, project, ski, t, tunesOf, view } from '../state/index.ts';
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
          {[owner && t('print.of', { owner }), disciplineText(pair.discipline), pair.demo && t('print.demo')]
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
          <h2>{t('common.notes')}</h2>
          <p class="sheet-notes">{pair.notes}</p>
        </section>
      )}
      <p class="sheet-cautions">
        {t('print.uncertainty', {
          stiffness: TAKEN_AS.stiffness * 100,
          mass: TAKEN_AS.massKg / sizeOf('g'),
          angle: TAKEN_AS.angleDeg,
        })}
      </p>
      <ul class="sheet-cautions">
        {CAUTIONS.slice(0, 4).map(caution => (
          <li key={caution}>{t(caution)}</li>
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
        {t('print.ruleCheck', {
          discipline: disciplineText(check.discipline),
          category: { key: `category.${check.category}` },
          edition: editionText(check.edition),
          verdict: verdictText(check.verdict),
        })}
      </caption>
      <tbody>
        {check.items.map(item => (
          <tr key={`${item.rule} ${limitText(item, system)}`}>
            <th scope="row">{limitedText(item)}</th>
            <td>{limitText(item, system)}</td>
            <td>{foundText(item, system)}</td>
            <td>{verdictText(item.verdict)}</td>
            <td>{t('print.limitStatus', { status: statusText(item.status) })}</td>
          </tr>
        ))}
        {check.items.length === 0 && (
          <tr>
            <td>{t('print.noLimits')}</td>
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
      <caption>
        {more > 0 ? t('print.lastTunes', { shown: MOST_TUNES, count: tunes.length }) : t('squad.tuneLog')}
      </caption>
      <tbody>
        {tunes.slice(0, MOST_TUNES).map(tune => (
          <tr key={`${tune.date} ${tuneText(tune)}`}>
            <th scope="row">{tune.date}</th>
            <td>{tuneText(tune) || t('squad.noDetails')}</td>
          </tr>
        ))}
        {tunes.length === 0 && (
          <tr>
            <td>{t('print.nothingLogged')}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}
