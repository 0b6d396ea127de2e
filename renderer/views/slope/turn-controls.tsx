import type { JSX } from 'preact';
import { ConditionControl } from '../../controls/index.ts';
import { openFiles } from '../../files/index.ts';
import { Segments } from '../../kit/index.ts';
import { changeSlope, type SlopeSettings, slope } from '../../state/index.ts';
import { FileChoice } from './file-choice.tsx';
import { RhythmControls } from './rhythm-controls.tsx';
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
  const { programme: kind, shape, programmeFile } = slope.value;
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
          <ConditionControl field="edgeDeg" label="condition.peakEdge" />
          <ConditionControl field="periodS" />
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
        <ConditionControl field="turns" label={kind === 'rhythm' ? 'condition.turnsShown' : undefined} />
      )}
      {kind === 'banked' && <ConditionControl field="traverseDeg" note="from the fall line" />}
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
