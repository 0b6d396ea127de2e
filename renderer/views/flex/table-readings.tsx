import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { type Bendable, flatTableOf, setupOf, tableLoads } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';

/** How the camber closes on a flat hard table under the press as it stands. */
export function TableReadings({ pair }: { pair: Bendable }): JSX.Element {
  if (pair.ski.camber === 0) {
    return <p class="reading-hint">{t('flex.noCamber', { name: pair.name })}</p>;
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
      <h2>{t('flex.camberClosing', { name: pair.name })}</h2>
      <Reading
        label={t('flex.firstTouch')}
        measure="force"
        decimals={1}
        size="small"
        value={firstTouch}
        note={t('flex.atFromRear', { at: station(firstTouchAt) })}
        working={() => tableLoads(pair)}
      />
      <Reading
        label={t('flex.fullyFlattened')}
        measure="force"
        decimals={1}
        size="small"
        value={flatten}
        why={t('flex.neverFlat', { gap, at: station(gapLeftAt) })}
        working={() => tableLoads(pair)}
      />
      {flatten === null && (
        <Reading
          label={t('flex.gapStays')}
          measure="deflection"
          size="small"
          value={gapLeft}
          working={() => tableLoads(pair)}
        />
      )}
    </section>
  );
}
