import type { JSX } from 'preact';
import { openFiles } from '../../files/index.ts';
import { Quantity, Segments } from '../../kit/index.ts';
import { changeSlope, conditions, type SlopeSettings, slope } from '../../state/index.ts';
import { FileChoice } from './file-choice.tsx';
import { RhythmControls } from './rhythm-controls.tsx';
import { setCondition as set } from './set-condition.ts';
import { sheet } from './settings.ts';

const PROGRAMMES: readonly { value: SlopeSettings['programme']; label: string; title: string }[] = [
  { value: 'linked', label: 'Linked', title: 'Turn after turn by edge angle, period and shape' },
  { value: 'rhythm', label: 'Rhythm', title: 'The quickest turn from gate to gate, found by the program' },
  { value: 'drawn', label: 'Drawn', title: 'Edge angle over time, drawn with handles' },
  { value: 'banked', label: 'Banked', title: 'No angulation: the skis lean with the body' },
  { value: 'file', label: 'CSV', title: 'Time in s and edge angle in degrees, from a file' },
];

/** What the skier does: the programme of edge angles. */
export function TurnControls(): JSX.Element {
  const c = conditions.value;
  const { programme: kind, shape, traverseDeg, programmeFile } = slope.value;
  return (
    <section class="control-group">
      <Segments
        label="Turns"
        value={kind}
        options={PROGRAMMES}
        onInput={next => {
          changeSlope('Turns', { programme: next });
          if (next === 'drawn') sheet.value = 'programme';
        }}
      />
      {kind === 'linked' && (
        <>
          <Quantity
            label="Edge angle at the peak"
            measure="angleDeg"
            value={c.edgeDeg}
            min={5}
            max={75}
            step={1}
            decimals={0}
            onInput={set('Edge angle', 'edgeDeg')}
          />
          <Quantity
            label="Time for two turns"
            measure="time"
            value={c.periodS}
            min={0.8}
            max={8}
            step={0.1}
            onInput={set('Period', 'periodS')}
          />
          <Segments
            label="Shape"
            value={shape}
            options={[
              { value: 'sine', label: 'Flowing' },
              { value: 'trapezoid', label: 'Held at the peak' },
            ]}
            onInput={next => changeSlope('Shape', { shape: next })}
          />
        </>
      )}
      {kind === 'rhythm' && <RhythmControls />}
      {(kind === 'linked' || kind === 'rhythm' || kind === 'banked') && (
        <Quantity
          label={kind === 'rhythm' ? 'Turns shown' : 'Number of turns'}
          measure="count"
          value={c.turns}
          min={1}
          max={24}
          step={1}
          onInput={value => set('Turns', 'turns')(Math.max(1, Math.round(value)))}
        />
      )}
      {kind === 'banked' && (
        <Quantity
          label="Changes side at a traverse of"
          measure="angleDeg"
          value={traverseDeg}
          min={20}
          max={85}
          step={1}
          decimals={0}
          note="from the fall line"
          onInput={value => changeSlope('Traverse', { traverseDeg: value }, 'traverseDeg')}
        />
      )}
      {kind === 'drawn' && (
        <button
          type="button"
          onClick={() => {
            sheet.value = 'programme';
          }}
        >
          Draw the edge angle
        </button>
      )}
      {kind === 'file' && (
        <FileChoice
          name={programmeFile?.name}
          hint="Rows of time in s and edge angle in degrees, positive in right turns. Until a file is open, linked turns are skied."
          onOpen={() => void openFiles('programme')}
        />
      )}
    </section>
  );
}
