import './energy-book.css';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { view } from '../../state/index.ts';
import { calmClock } from './clock.ts';
import { leadRun } from './runs.ts';
import { rowAt } from './skids.ts';

const ENTRIES = [
  ['kinetic', 'in speed'],
  ['friction', 'to friction'],
  ['drag', 'to the air'],
  ['scrape', 'to scraping edges'],
] as const;

/** Where the height went, up to the time shown: what the hill gave against what it became. */
export function EnergyBook(): JSX.Element | null {
  const run = leadRun.value;
  if (!run) return null;
  const { energy, t } = run.track;
  const row = rowAt(run.track, calmClock.value);
  const joule = (value: number) =>
    formatQuantity(Math.abs(value) < 0.5 ? 0 : value, 'energy', { system: view.value.system }).text;
  const whole = Math.max(
    1,
    energy.drop[row]! + Math.max(0, energy.legs[row]!),
    ENTRIES.reduce((sum, [key]) => sum + Math.max(0, energy[key][row]!), 0),
  );
  return (
    <section class="energy-book" aria-label="Energy book">
      <h2>
        Energy book of {run.pair.name}, to {t[row]!.toFixed(1)} s
      </h2>
      <table>
        <tbody>
          <tr class="given">
            <th scope="row">Given by the drop</th>
            <td>
              <Bar share={energy.drop[row]! / whole} />
            </td>
            <td class="joules">{joule(energy.drop[row]!)}</td>
          </tr>
          <tr class="given">
            <th scope="row">Given by the legs</th>
            <td>
              <Bar share={energy.legs[row]! / whole} />
            </td>
            <td class="joules">{joule(energy.legs[row]!)}</td>
          </tr>
          {ENTRIES.map(([key, label]) => (
            <tr key={key}>
              <th scope="row">{label}</th>
              <td>
                <Bar share={energy[key][row]! / whole} />
              </td>
              <td class="joules">{joule(energy[key][row]!)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="reading-hint">
        {energy.kinetic[row]! < 0
          ? 'The skier has slowed down: speed gave back energy that was lost to the snow and the air. '
          : ''}
        The book closes to {energy.errorRatio[row]!.toExponential(0)} of the energy in it.
      </p>
    </section>
  );
}

function Bar({ share }: { share: number }): JSX.Element {
  const width = `${Math.min(100, Math.abs(share) * 100)}%`;
  return <span class={share < 0 ? 'bar given-back' : 'bar'} style={{ width }} />;
}
