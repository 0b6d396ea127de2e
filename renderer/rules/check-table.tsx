import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import {
  type CheckItem,
  catalogueRadiusWorking,
  controlRadiusWorking,
  controlReadingsOf,
  editionText,
  type PairCheck,
  threeReadingsWorking,
} from '../../core/rules/index.ts';
import type { Working } from '../../core/working/index.ts';
import { foundText, limitedText, limitText, sourcesText, statusText } from '../answers/index.ts';
import { PairBadge, showWorking } from '../kit/index.ts';
import { allInWords, disciplineText, inWords, type PairMark, t, view } from '../state/index.ts';
import { ControlInputs } from './control-inputs.tsx';
import { VerdictMark } from './verdict-mark.tsx';

/** Every limit for one pair, and the control's own readings of it: what it is, what was found, what follows, and how well the limit is established. */
export function CheckTable(props: {
  readonly id: string;
  readonly name: string;
  readonly mark?: PairMark;
  readonly pair: Pair;
  readonly readOnly?: string | undefined;
  readonly check: PairCheck;
}): JSX.Element {
  const { id, name, mark, pair, check, readOnly } = props;
  return (
    <section class="checked-pair">
      <h3>
        {mark && <PairBadge mark={mark} />}
        <span>{name}</span>
        <VerdictMark verdict={check.verdict} />
      </h3>
      {check.items.length > 0 && (
        <div class="plain-scroll">
          <table class="plain-table">
            <caption class="sr-only">
              {t('rules.caption', {
                name,
                discipline: disciplineText(check.discipline),
                category: { key: `category.${check.category}` },
                edition: editionText(check.edition),
              })}
            </caption>
            <thead>
              <tr>
                <th scope="col">{t('rules.rule')}</th>
                <th scope="col">{t('rules.limit')}</th>
                <th scope="col">{t('rules.found')}</th>
                <th scope="col">{t('rules.verdictColumn')}</th>
                <th scope="col">{t('rules.howKnown')}</th>
              </tr>
            </thead>
            <tbody>
              {check.items.map((item, i) => (
                <Row key={i} item={item} pair={pair} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {check.items.filter(underLimit).map(item => (
        <p key={item.rule} class="reading-hint">
          {t('rules.noteOf', { rule: limitedText(item), note: item.note ?? '' })}
        </p>
      ))}
      <ControlInputs
        id={id}
        name={name}
        pair={pair}
        readOnly={readOnly}
        goesOn={check.items.some(underLimit)}
      />
      {check.items.length > 0 && (
        <p class="reading-hint">{t('rules.limitsFrom', { sources: sourcesText(check.items) })}</p>
      )}
      <p class="reading-hint">{allInWords(check.caution)}</p>
    </section>
  );
}

/** Two more readings follow such a first one, as the note says. */
const underLimit = ({ control, least }: CheckItem): boolean =>
  control !== null && least !== null && control.radii[0] < least;

function radiusWorking(pair: Pair, { control }: CheckItem): Working | readonly Working[] {
  if (control === null) return catalogueRadiusWorking(pair);
  const readings = controlReadingsOf(pair.control);
  return control.used === 'three readings'
    ? [threeReadingsWorking(readings), ...readings.map(controlRadiusWorking)]
    : controlRadiusWorking(readings[0]);
}

const foundBy = ({ control }: CheckItem): string => {
  if (control === null) return t('rules.catalogueWidths');
  if (control.used === 'first reading') return t('rules.controlStations');
  return t('rules.meanOfThree', { procedure: control.procedure ?? '' });
};

function Row({ item, pair }: { item: CheckItem; pair: Pair }): JSX.Element {
  const { system } = view.value;
  const found = foundText(item, system);
  return (
    <tr>
      <th scope="row">{limitedText(item)}</th>
      <td>{limitText(item, system)}</td>
      <td class="found" title={item.note ? inWords(item.note) : undefined}>
        {found}
        {item.quantity === 'radiusM' && item.found !== null && (
          <button
            type="button"
            class="bare row-link"
            aria-label={t('rules.howFound', { name: pair.name })}
            onClick={() =>
              showWorking(t('rules.rulebookRadius', { name: pair.name }), radiusWorking(pair, item))
            }
          >
            {t('kit.how')}
          </button>
        )}
        {item.quantity === 'radiusM' && item.found !== null && (
          <span class="reading-note">{foundBy(item)}</span>
        )}
      </td>
      <td>
        <VerdictMark verdict={item.verdict} />
      </td>
      <td class="status">{statusText(item.status)}</td>
    </tr>
  );
}
