import './energy-book.css';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { leadRun } from '../../answers/index.ts';
import { t, view } from '../../state/index.ts';
import { calmClock } from './clock.ts';
import { rowAt } from './skids.ts';

const ENTRIES = ['kinetic', 'friction', 'drag', 'scrape'] as const;

/** Where the height went, up to the time shown: what the hill gave against what it became. */
export function EnergyBook(): JSX.Element | null {
  const run = leadRun.value;
  if (!run) return null;
  const { energy, t: time } = run.track;
  const row = rowAt(run.track, calmClock.value);
  const joule = (value: number) =>
    formatQuantity(Math.abs(value) < 0.5 ? 0 : value, 'energy', { system: view.value.system }).text;
  const whole = Math.max(
    1,
    energy.drop[row]! + Math.max(0, energy.legs[row]!),
    ENTRIES.reduce((sum, key) => sum + Math.max(0, energy[key][row]!), 0),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a low window scrolls it, and there is nothing else in it to focus
    <section class="energy-book" aria-label={t('slope.energyTitle')} tabIndex={0}>
      <h2>{t('slope.energyTo', { name: run.pair.name, time: time[row]!.toFixed(1) })}</h2>
      <table>
        <tbody>
          <tr class="given">
            <th scope="row">{t('slope.fromHill')}</th>
            <td>
              <Bar share={energy.drop[row]! / whole} />
            </td>
            <td class="joules">{joule(energy.drop[row]!)}</td>
          </tr>
          <tr class="given">
            <th scope="row">{t('slope.fromLegs')}</th>
            <td>
              <Bar share={energy.legs[row]! / whole} />
            </td>
            <td class="joules">{joule(energy.legs[row]!)}</td>
          </tr>
          {ENTRIES.map(key => (
            <tr key={key}>
              <th scope="row">{t(`slope.energy.${key}`)}</th>
              <td>
                <Bar share={energy[key][row]! / whole} />
              </td>
              <td class="joules">{joule(energy[key][row]!)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="reading-hint">
        {energy.kinetic[row]! < 0 && `${t('slope.slowedDown')} `}
        {energy.legs[row]! < 0 && `${t('slope.legsGaveWay')} `}
        {t('slope.sumsAgree', { agreement: agreement(energy.errorRatio[row]!) })}
      </p>
    </section>
  );
}

/** A share as a person reads it: 0.01 %, or one part in a million. */
function agreement(ratio: number): string {
  if (ratio >= 1e-4) return `${(100 * ratio).toPrecision(1)} %`;
  const parts = 10 ** Math.min(12, Math.floor(-Math.log10(Math.max(ratio, 1e-12))));
  return t('slope.agreesTo', { parts: parts.toLocaleString('en') });
}

function Bar({ share }: { share: number }): JSX.Element {
  const width = `${Math.min(100, Math.abs(share) * 100)}%`;
  return <span class={share < 0 ? 'bar given-back' : 'bar'} style={{ width }} />;
}
