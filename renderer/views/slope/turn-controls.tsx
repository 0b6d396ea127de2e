import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { openFiles } from '../../files/index.ts';
import { Segments, worded } from '../../kit/index.ts';
import { changeSlope, type SlopeSettings, slope, t } from '../../state/index.ts';
import { FileChoice } from './file-choice.tsx';
import { RhythmControls } from './rhythm-controls.tsx';
import { sheet } from './settings.ts';

const PROGRAMMES: readonly { value: SlopeSettings['programme']; label: PlainKey; title: PlainKey }[] = [
  { value: 'linked', label: 'slope.programme.linked', title: 'slope.programme.linkedHint' },
  { value: 'rhythm', label: 'slope.programme.rhythm', title: 'slope.programme.rhythmHint' },
  { value: 'drawn', label: 'slope.programme.drawn', title: 'slope.programme.drawnHint' },
  { value: 'banked', label: 'slope.programme.banked', title: 'slope.programme.bankedHint' },
  { value: 'file', label: 'slope.csv', title: 'slope.programme.fileHint' },
];

/** What the skier does: the programme of edge angles. */
export function TurnControls(): JSX.Element {
  const { programme: kind, shape, programmeFile } = slope.value;
  return (
    <section class="control-group">
      <Segments
        label={t('slope.turns')}
        value={kind}
        options={worded(PROGRAMMES)}
        onInput={next => {
          changeSlope(t('slope.turns'), { programme: next });
          if (next === 'drawn') sheet.value = 'programme';
        }}
      />
      {kind === 'linked' && (
        <>
          <ConditionControl field="edgeDeg" label="condition.peakEdge" />
          <ConditionControl field="periodS" />
          <Segments
            label={t('slope.shape')}
            value={shape}
            options={[
              { value: 'sine', label: t('slope.flowing') },
              { value: 'trapezoid', label: t('slope.heldAtPeak') },
            ]}
            onInput={next => changeSlope(t('slope.shape'), { shape: next })}
          />
        </>
      )}
      {kind === 'rhythm' && <RhythmControls />}
      {(kind === 'linked' || kind === 'rhythm' || kind === 'banked') && (
        <ConditionControl field="turns" label={kind === 'rhythm' ? 'condition.turnsShown' : undefined} />
      )}
      {kind === 'banked' && <ConditionControl field="traverseDeg" note={t('slope.fromFallLine')} />}
      {kind === 'drawn' && (
        <button
          type="button"
          onClick={() => {
            sheet.value = 'programme';
          }}
        >
          {t('slope.drawEdgeAngle')}
        </button>
      )}
      {kind === 'file' && (
        <FileChoice
          name={programmeFile?.name}
          hint={t('slope.turnsFileHint')}
          onOpen={() => void openFiles('programme')}
        />
      )}
    </section>
  );
}
