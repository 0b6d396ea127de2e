import type { JSX } from 'preact';
import { NAMED_SNOWS } from '../../core/carve/index.ts';
import { HELD_BACK_WORDS } from '../../core/line/index.ts';
import { decimal, formatQuantity, type MeasureName } from '../../core/units/index.ts';
import {
  changeText,
  checkOf,
  day,
  inputName,
  type QuickestAnswer,
  type QuickestPair,
  setRuns,
  verdictText,
} from '../answers/index.ts';
import { CAUTIONS } from '../help/index.ts';
import {
  allInWords,
  conditions,
  course,
  fileStem,
  inWords,
  project,
  slope,
  t,
  view,
} from '../state/index.ts';
import { printPaper } from './paper.tsx';

/** Changes and gates that find room on the page. */
const MOST_CHANGES = 8;
const MOST_GATES = 6;

/** Prints the page for the start: the set, the snow, the pick with its ±, what it hangs on, the gates to mind. */
export async function printStart(): Promise<void> {
  const answer = setRuns.value.value;
  if (!answer || answer.pairs.length === 0) return;
  const name = `${fileStem(course.value.name || 'set')}-start-${day.value}.pdf`;
  await printPaper(t('print.startName'), name, () => <StartSheet answer={answer} />);
}

const pairOf = (id: string) => project.value.rack.find(entry => entry.id === id)?.pair;
const seconds = (value: number, plusMinus: number) =>
  t('set.seconds', { seconds: decimal(value, 2), plusMinus: decimal(plusMinus, 2) });
const text = (value: number, measure: MeasureName, decimals?: number) =>
  formatQuantity(value, measure, { system: view.value.system, decimals }).text;

/** The page itself. */
export function StartSheet({ answer }: { answer: QuickestAnswer }): JSX.Element {
  const told = answer.pairs.find(({ id }) => id === answer.pick) ?? answer.pairs[0]!;
  const { name, gates, discipline, demo } = course.value;
  return (
    <>
      <header class="sheet-head">
        <h1>{name || t('set.theSet')}</h1>
        <p>
          {[
            t('print.startHead', {
              discipline: { key: `discipline.${discipline}` },
              gates: t('common.gates', { count: gates.length }),
              day: day.value,
            }),
            demo && t('set.demoData'),
          ]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </header>
      <p>{conditionsText()}</p>
      <section>
        <h2>{t(answer.pick === null ? 'set.noPick' : 'set.thePick')}</h2>
        {answer.pick !== null && (
          <p class="start-pick">
            {pairOf(told.id)?.name} {seconds(told.seconds, told.secondsPlusMinus)}
          </p>
        )}
        <p>{allInWords(answer.because)}</p>
      </section>
      <Times answer={answer} />
      <div class="sheet-columns">
        <Changes pair={told} />
        <Gates pair={told} />
      </div>
      <ul class="sheet-cautions">
        <li>{t('set.noAdvice')}</li>
        {CAUTIONS.slice(0, 4).map(caution => (
          <li key={caution}>{t(caution)}</li>
        ))}
      </ul>
    </>
  );
}

/** "Slope 20.0°, from 30 km/h at the start, on groomed snow (1.00 N/mm³); skier 48 kg with equipment." */
function conditionsText(): string {
  const { slopeDeg, speedKmh, keepSpeed, onProfile } = course.value;
  const { hardnessNPerMm3, massKg } = conditions.value;
  const snow = NAMED_SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3);
  return t('print.startConditions', {
    hill: onProfile ? (slope.value.groundFile?.name ?? '') : text(slopeDeg, 'angleDeg'),
    start: keepSpeed ? 'pace' : speedKmh === 0 ? 'rest' : 'speed',
    speed: text(speedKmh, 'speedKmh'),
    snow: snow?.name ?? '',
    hardness: text(hardnessNPerMm3, 'hardnessNPerMm3'),
    mass: text(massKg, 'massKg'),
  });
}

function Times({ answer }: { answer: QuickestAnswer }): JSX.Element {
  const { discipline, category } = course.value;
  return (
    <table>
      <caption>{t('print.startTimes', { category })}</caption>
      <thead>
        <tr>
          <th scope="col">{t('set.pair')}</th>
          <th scope="col">{t('set.time')}</th>
          <th scope="col">{t('set.gap')}</th>
          <th scope="col">{t('set.peakEdge')}</th>
          <th scope="col">{t('set.greatestLoad')}</th>
          <th scope="col">{t('set.legWork')}</th>
          <th scope="col">{t('set.ruleCheck')}</th>
        </tr>
      </thead>
      <tbody>
        {answer.pairs.map((pair, place) => {
          const of = pairOf(pair.id);
          return (
            <tr key={pair.id}>
              <th scope="row">{of?.name}</th>
              <td>{seconds(pair.seconds, pair.secondsPlusMinus)}</td>
              <td>{place === 0 ? '–' : seconds(pair.gap, pair.gapPlusMinus)}</td>
              <td>{text(pair.neededEdge, 'angle', 0)}</td>
              <td>{t('set.bodyWeights', { load: decimal(pair.greatestLoad, 1) })}</td>
              <td>{text(pair.legWork, 'work')}</td>
              <td>{of && verdictText(checkOf(of, discipline).verdict)}</td>
            </tr>
          );
        })}
        {answer.untimed.map(({ id, why }) => (
          <tr key={id}>
            <th scope="row">{pairOf(id)?.name}</th>
            <td colSpan={6}>{inWords(why)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Changes({ pair }: { pair: QuickestPair }): JSX.Element {
  return (
    <table>
      <caption>{t('print.startWorth')}</caption>
      <tbody>
        {pair.worth.slice(0, MOST_CHANGES).map(each => (
          <tr key={each.input}>
            <th scope="row">{inputName(each)}</th>
            <td>{changeText(each)}</td>
            <td>
              {t('set.worthSeconds', {
                seconds: `${each.seconds < 0 ? '−' : '+'}${decimal(Math.abs(each.seconds), 2)}`,
              })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The tightest gates, in the order they come. */
function Gates({ pair }: { pair: QuickestPair }): JSX.Element {
  const labels = course.value.gates.map(gate => gate.label);
  const tightest = pair.gates
    .map((gate, at) => ({ gate, at }))
    .toSorted((a, b) => a.gate.radius - b.gate.radius)
    .slice(0, MOST_GATES)
    .toSorted((a, b) => a.at - b.at);
  return (
    <table>
      <caption>{t('print.startGates')}</caption>
      <tbody>
        {tightest.map(({ gate, at }) => (
          <tr key={at}>
            <th scope="row">{t('set.gateStep', { gate: labels[at] ?? '' })}</th>
            <td>{text(gate.radius, 'radius', 1)}</td>
            <td>{text(gate.speed, 'speed', 0)}</td>
            <td>{t(HELD_BACK_WORDS[gate.heldBackBy])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
