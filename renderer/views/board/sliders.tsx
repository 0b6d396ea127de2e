import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardSkis, bySize, type Place, putSki } from '../../answers/index.ts';
import { conditionProps } from '../../controls/index.ts';
import { conditions, t, view } from '../../state/index.ts';
import { BigSlider } from './big-slider.tsx';

/** Edge angle, speed and ski: all a demonstration needs. */
export function Sliders(): JSX.Element {
  const { edgeDeg, speedKmh } = conditions.value;
  const { system } = view.value;
  return (
    <section class="board-sliders" aria-label={t('board.whatToChange')}>
      <BigSlider
        {...slider('edgeDeg')}
        text={formatQuantity(edgeDeg, 'angleDeg', { system, decimals: 0 }).text}
      />
      <BigSlider
        {...slider('speedKmh', 'condition.speed')}
        text={formatQuantity(speedKmh, 'speedKmh', { system }).text}
      />
      <div class="ski-sliders">
        {boardSkis.value.map((_, place) => (
          <SkiSlider key={place} place={place as Place} />
        ))}
      </div>
    </section>
  );
}

function slider(field: 'edgeDeg' | 'speedKmh', label?: PlainKey) {
  const { label: name, min, max, value, step, onInput } = conditionProps(field, label);
  return { label: name, min, max, value, step, onInput };
}

function SkiSlider({ place }: { place: Place }): JSX.Element | null {
  const one = boardSkis.value[place];
  const all = bySize.value;
  if (!one) return null;
  return (
    <BigSlider
      label={t('board.ski')}
      letter={one.mark.letter}
      colour={one.mark.colour}
      value={all.findIndex(entry => entry.id === one.id)}
      min={0}
      max={Math.max(1, all.length - 1)}
      step={1}
      text={one.name}
      onInput={at => {
        const entry = all[at];
        if (entry) putSki(place, entry.id);
      }}
    />
  );
}
