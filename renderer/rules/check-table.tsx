import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import {
  type CheckItem,
  catalogueRadiusWorking,
  controlRadiusWorking,
  controlReadingsOf,
  type PairCheck,
  threeReadingsWorking,
} from '../../core/rules/index.ts';
import type { Working } from '../../core/working/index.ts';
import { foundText, limitedText, limitText, sourcesText } from '../answers/index.ts';
import { PairBadge, showWorking } from '../kit/index.ts';
import { type PairMark, view } from '../state/index.ts';
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
              {name} as {check.discipline}, {check.category}, by {check.edition}
            </caption>
            <thead>
              <tr>
                <th scope="col">Rule</th>
                <th scope="col">Limit</th>
                <th scope="col">Found</th>
                <th scope="col">Verdict</th>
                <th scope="col">How known</th>
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
          {limitedText(item)}: {item.note}.
        </p>
      ))}
      <ControlInputs
        id={id}
        name={name}
        pair={pair}
        readOnly={readOnly}
        goesOn={check.items.some(underLimit)}
      />
      {check.items.length > 0 && <p class="reading-hint">Limits from: {sourcesText(check.items)}.</p>}
      <p class="reading-hint">{check.caution}</p>
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
  if (control === null) return 'catalogue widths';
  if (control.used === 'first reading') return 'control stations';
  return `1.015 × mean of three: ${control.procedure}`;
};

function Row({ item, pair }: { item: CheckItem; pair: Pair }): JSX.Element {
  const { system } = view.value;
  const found = foundText(item, system);
  return (
    <tr>
      <th scope="row">{limitedText(item)}</th>
      <td>{limitText(item, system)}</td>
      <td class="found" title={item.note ?? undefined}>
        {found}
        {item.quantity === 'radiusM' && item.found !== null && (
          <button
            type="button"
            class="bare row-link"
            aria-label={`How the radius of ${pair.name} was found`}
            onClick={() => showWorking(`Rulebook radius: ${pair.name}`, radiusWorking(pair, item))}
          >
            how?
          </button>
        )}
        {item.quantity === 'radiusM' && item.found !== null && (
          <span class="reading-note">{foundBy(item)}</span>
        )}
      </td>
      <td>
        <VerdictMark verdict={item.verdict} />
      </td>
      <td class="status">{item.status === 'from memory' ? 'from memory, confirm' : item.status}</td>
    </tr>
  );
}
