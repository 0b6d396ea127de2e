import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { type Bendable, flatTableOf, setupOf, tableLoads } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { view } from '../../state/index.ts';

/** How the camber closes on a flat hard table under the press as it stands. */
export function TableReadings({ pair }: { pair: Bendable }): JSX.Element {
  if (pair.ski.camber === 0) {
    return <p class="reading-hint">{pair.name} has no camber: it lies on the table as it is.</p>;
  }
  const { firstTouch, firstTouchAt, flatten, gapLeft, gapLeftAt } = flatTableOf(
    pair,
    setupOf(pair.ski, 0).at,
  );
  const { system } = view.value;
  const station = (x: number) => formatQuantity(x, 'station', { system }).text;
  const gap = formatQuantity(gapLeft, 'deflection', { system }).text;
  return (
    <section class="reading-group">
      <h2>{pair.name}, camber closing</h2>
      <Reading
        label="First touch"
        measure="force"
        decimals={1}
        size="small"
        value={firstTouch}
        note={`at ${station(firstTouchAt)} from the rear contact point`}
        working={() => tableLoads(pair)}
      />
      <Reading
        label="Whole base down, within 0.1 mm"
        measure="force"
        decimals={1}
        size="small"
        value={flatten}
        why={`Never by this press: ${gap} stays open at ${station(gapLeftAt)}.`}
        working={() => tableLoads(pair)}
      />
      {flatten === null && (
        <Reading
          label="Gap that stays"
          measure="deflection"
          size="small"
          value={gapLeft}
          working={() => tableLoads(pair)}
        />
      )}
    </section>
  );
}
