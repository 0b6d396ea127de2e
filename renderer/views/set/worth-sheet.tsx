import type { JSX } from 'preact';
import { decimal } from '../../../core/units/index.ts';
import { changeText, inputName, setRunOf, setRuns } from '../../answers/index.ts';
import { exportTable } from '../../files/index.ts';
import { Empty, PairBadge } from '../../kit/index.ts';
import { activePair, course, fileStem, t } from '../../state/index.ts';
import { Waiting } from './waiting.tsx';

/** What is worth less than this in the whole set is left out, s. */
const LEAST = 0.0005;

/** What a tenth is made of: what each realistic change brings the active pair, as bars. */
export function WorthSheet(): JSX.Element {
  const active = activePair.value;
  const run = active && setRunOf(active.id);
  if (!active || !run) {
    return active ? (
      <Waiting />
    ) : (
      <Empty>
        <p>{t('set.chooseForWorth')}</p>
      </Empty>
    );
  }
  const reported = run.worth.filter(({ seconds }) => Math.abs(seconds) >= LEAST);
  const most = Math.max(...reported.map(({ seconds }) => Math.abs(seconds)));
  const rows = () => [
    [t('set.change'), t('set.by'), t('set.csv.worth')],
    ...run.worth.map(each => [inputName(each), changeText(each), each.seconds.toFixed(4)]),
  ];
  return (
    <>
      <div class="set-head">
        <PairBadge mark={active.mark} />
        <strong>{active.name}</strong>
        <span class="reading-hint">{t('set.worthHint')}</span>
        <button
          type="button"
          class="bare row-link"
          onClick={() => void exportTable(`${fileStem(course.value.name || 'set')}-worth.csv`, rows())}
        >
          {t('set.saveTable')}
        </button>
      </div>
      <div class={setRuns.value.running ? 'plain-scroll stale' : 'plain-scroll'}>
        <table class="plain-table worth-table">
          <caption class="sr-only">{t('set.worthCaption', { name: active.name })}</caption>
          <thead>
            <tr>
              <th scope="col">{t('set.change')}</th>
              <th scope="col" class="number">
                {t('set.by')}
              </th>
              <th scope="col" class="number">
                {t('set.worth')}
              </th>
              <td class="change-head">
                <span>{t('set.quicker')}</span>
                <span>{t('set.slower')}</span>
              </td>
            </tr>
          </thead>
          <tbody>
            {reported.map(each => (
              <tr key={each.input}>
                <th scope="row">{inputName(each)}</th>
                <td class="number">{changeText(each)}</td>
                <td class="number">{t('set.worthSeconds', { seconds: signed(each.seconds) })}</td>
                <td class="change-cell" aria-hidden="true">
                  <span
                    class={each.seconds < 0 ? 'change-bar quicker' : 'change-bar slower'}
                    style={{ '--part': Math.abs(each.seconds) / most }}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="reading-hint">{t('set.worthNote')}</p>
    </>
  );
}

/** "−0.08": to the hundredth, or as many digits as show that it is something. */
function signed(seconds: number): string {
  const digits = Math.abs(seconds) < 0.01 ? 3 : 2;
  return `${seconds < 0 ? '−' : '+'}${decimal(Math.abs(seconds), digits)}`;
}
