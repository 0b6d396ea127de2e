import type { JSX } from 'preact';
import { ConditionControl } from '../../controls/index.ts';
import { openFiles } from '../../files/index.ts';
import { Segments } from '../../kit/index.ts';
import { changeSlope, slope } from '../../state/index.ts';
import { FileChoice } from './file-choice.tsx';

/** The ground the skis run on. */
export function HillControls(): JSX.Element {
  const { ground: wanted, groundFile, programme } = slope.value;
  const rhythm = programme === 'rhythm';
  const ground = rhythm ? 'even' : wanted;
  return (
    <details class="control-group" open>
      <summary>Hill</summary>
      {rhythm ? (
        <p class="reading-hint">A rhythm is the pace that can be kept for ever, so its hill is even.</p>
      ) : (
        <Segments
          label="Ground"
          labelHidden
          value={ground}
          options={[
            { value: 'even', label: 'Even' },
            { value: 'roller', label: 'Rollers', title: 'Invented ground, demo data' },
            { value: 'steepening', label: 'Steeper', title: 'Invented ground, demo data' },
            { value: 'file', label: 'CSV' },
          ]}
          onInput={next => changeSlope('Ground', { ground: next })}
        />
      )}
      {ground === 'even' && <ConditionControl field="slopeDeg" />}
      {(ground === 'roller' || ground === 'steepening') && (
        <p class="reading-hint">Pala Ostrelle, an invented hill (demo data).</p>
      )}
      {ground === 'file' && (
        <FileChoice
          name={groundFile?.name}
          hint="Rows of horizontal distance and height in m. Until a file is open, the even slope is skied."
          onOpen={() => void openFiles('slope')}
        />
      )}
    </details>
  );
}
