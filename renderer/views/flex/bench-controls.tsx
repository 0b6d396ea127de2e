import type { JSX } from 'preact';
import { MM } from '../../../core/units/index.ts';
import { type Bendable, pressRange, rest, SUPPORT_SHARE, setupOf } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { Quantity } from '../../kit/index.ts';
import { t } from '../../state/index.ts';
import { frontInMm, moveBench, rearInMm } from './bench.ts';
import { placeText } from './side-load.tsx';

/** The same things the grips on the drawing move, as numbers. */
export function BenchControls({ lead }: { lead: Bendable }): JSX.Element {
  const { rear, front, at, length } = setupOf(lead.ski, 0);
  const [least, most] = pressRange(lead.ski, rear, front).map(
    station => (station - lead.ski.bootCentre) / MM,
  ) as [number, number];
  const fore = (at - lead.ski.bootCentre) / MM;
  const inside = Math.round((SUPPORT_SHARE * length) / MM);
  return (
    <section class="reading-group bench-controls" aria-label={t('flex.press')}>
      <ConditionControl field="benchLoadN" label="condition.load" />
      <Quantity
        label={t('condition.benchFore')}
        measure="stationMm"
        value={fore}
        min={Math.ceil(least)}
        max={Math.floor(most)}
        step={5}
        note={placeText(fore)}
        onInput={moveBench.press}
      />
      {rest.value === 'bench' && (
        <>
          <Quantity
            label={t('condition.benchRearIn')}
            measure="stationMm"
            value={Math.min(rearInMm.value, inside)}
            min={0}
            max={inside}
            step={5}
            onInput={moveBench.rear}
          />
          <Quantity
            label={t('condition.benchFrontIn')}
            measure="stationMm"
            value={Math.min(frontInMm.value, inside)}
            min={0}
            max={inside}
            step={5}
            onInput={moveBench.front}
          />
        </>
      )}
    </section>
  );
}
