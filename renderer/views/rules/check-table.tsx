import type { JSX } from 'preact';
import type { Pair } from '../../../core/pair/index.ts';
import {
  type CheckItem,
  catalogueRadiusWorking,
  controlOf,
  controlRadiusWorking,
  type PairCheck,
} from '../../../core/rules/index.ts';
import { PairBadge, showWorking } from '../../kit/index.ts';
import { type PairMark, view } from '../../state/index.ts';
import { ControlInputs } from './control-inputs.tsx';
import { foundText, limitText } from './found-text.ts';
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
                <th scope="col">The limit is</th>
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
      {controlOf(pair.control) &&
        check.items.filter(underLimit).map(({ rule, note }) => (
          <p key={rule} class="reading-hint">
            {rule}: {note}.
          </p>
        ))}
      <ControlInputs id={id} name={name} pair={pair} readOnly={readOnly} />
      <p class="reading-hint">{check.caution}</p>
    </section>
  );
}

/** The control goes on from such a reading as the note says. */
const underLimit = ({ quantity, found, least }: CheckItem): boolean =>
  quantity === 'radiusM' && found !== null && least !== null && found < least;

function Row({ item, pair }: { item: CheckItem; pair: Pair }): JSX.Element {
  const { system } = view.value;
  const found = foundText(item, system);
  const control = controlOf(pair.control);
  return (
    <tr>
      <th scope="row">{item.rule}</th>
      <td>{limitText(item, system)}</td>
      <td class="found" title={item.note ?? undefined}>
        {found}
        {item.quantity === 'radiusM' && item.found !== null && (
          <button
            type="button"
            class="bare row-link"
            aria-label={`How the radius of ${pair.name} was found`}
            onClick={() =>
              showWorking(
                `Rulebook radius: ${pair.name}`,
                control ? controlRadiusWorking(control) : catalogueRadiusWorking(pair),
              )
            }
          >
            how?
          </button>
        )}
        {item.quantity === 'radiusM' && item.found !== null && (
          <span class="reading-note">{control ? 'control stations' : 'catalogue widths'}</span>
        )}
      </td>
      <td>
        <VerdictMark verdict={item.verdict} />
      </td>
      <td class="status" title={item.source}>
        {item.status === 'from memory' ? 'from memory, confirm' : item.status}
        <span class="sr-only">. {item.source}</span>
      </td>
    </tr>
  );
}
