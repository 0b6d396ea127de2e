import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardSkis, bySize, type Place, putSki } from '../../answers/index.ts';
import { changeConditions, conditions, view } from '../../state/index.ts';
import { BigSlider } from './big-slider.tsx';

/** Edge angle, speed and ski: all a demonstration needs. */
export function Sliders(): JSX.Element {
  const { edgeDeg, speedKmh } = conditions.value;
  const { system } = view.value;
  return (
    <section class="board-sliders" aria-label="What to change">
      <BigSlider
        label="Edge angle"
        value={edgeDeg}
        min={10}
        max={75}
        step={1}
        text={formatQuantity(edgeDeg, 'angleDeg', { system, decimals: 0 }).text}
        onInput={value => changeConditions('Edge angle', { edgeDeg: value }, 'edgeDeg')}
      />
      <BigSlider
        label="Speed"
        value={speedKmh}
        min={10}
        max={100}
        step={1}
        text={formatQuantity(speedKmh, 'speedKmh', { system }).text}
        onInput={value => changeConditions('Speed', { speedKmh: value }, 'speedKmh')}
      />
      <div class="ski-sliders">
        {boardSkis.value.map((_, place) => (
          <SkiSlider key={place} place={place as Place} />
        ))}
      </div>
    </section>
  );
}

function SkiSlider({ place }: { place: Place }): JSX.Element | null {
  const one = boardSkis.value[place];
  const all = bySize.value;
  if (!one) return null;
  return (
    <BigSlider
      label="Ski"
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
