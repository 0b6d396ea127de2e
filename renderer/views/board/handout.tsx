import './handout.css';
import type { JSX } from 'preact';
import { boardAnswers } from '../../answers/index.ts';
import { CAUTIONS } from '../../help/index.ts';
import { getHost } from '../../host/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { allInWords, conditions, errorWords, inWords, report, t, view } from '../../state/index.ts';
import { ArcPlan } from './arc-plan.tsx';
import { workingLine } from './working-line.ts';

/** Makes the page for everyone to take home: the print style shows nothing but the handout. */
export async function printHandout(): Promise<void> {
  try {
    if (await getHost().printPdf('handout.pdf')) report(t('board.handoutMade'));
  } catch (error) {
    report(t('board.handoutNotMade', { why: errorWords(error) }), 'error');
  }
}

/** The demonstration on one page. Seen on paper only. */
export function Handout(): JSX.Element | null {
  const shown = boardAnswers.value;
  if (shown.length === 0) return null;
  const c = conditions.value;
  const { system } = view.value;
  const demo = shown.some(({ ski: one }) => one.pair.demo);
  return (
    <article class="handout" aria-hidden="true">
      <h1>{t('board.question')}</h1>
      <p>
        {t('board.asked', {
          edge: { quantity: 'angleDeg', value: c.edgeDeg, decimals: 0 },
          speed: { quantity: 'speedKmh', value: c.speedKmh },
          slope: { quantity: 'angleDeg', value: c.slopeDeg, decimals: 0 },
          mass: { quantity: 'massKg', value: c.massKg, decimals: 0 },
          height: { quantity: 'bodyLength', value: c.heightM },
        })}
        {demo && ` ${t('board.invented')}`}
      </p>
      <p class="blank">
        {t('board.myGuess')}{' '}
        {shown
          .map(({ ski: one }) => `${one.mark.letter} ________ ${system === 'imperial' ? 'ft' : 'm'}`)
          .join(', ')}
      </p>
      <ArcPlan always />
      <table>
        <thead>
          <tr>
            <th />
            {shown.map(({ ski: one }) => (
              <th key={one.id}>
                <PairBadge mark={one.mark} /> {one.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown[0]!.chain().map((working, row) => (
            <tr key={working.key}>
              <th>{inWords(working.title)}</th>
              {shown.map(answer => (
                <td key={answer.ski.id}>{workingLine(answer.chain()[row]!, system)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {shown.map(({ ski: one, words, source }) => (
        <section key={one.id}>
          <h2>
            {one.mark.letter} {one.name}
          </h2>
          <p>
            {allInWords([words.verdict, ...words.stance, ...words.changes])} (
            {t('common.says', { name: one.name, what: source })})
          </p>
        </section>
      ))}
      <p class="caution">{t(CAUTIONS[0])}</p>
    </article>
  );
}
