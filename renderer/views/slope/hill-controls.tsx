import type { JSX } from 'preact';
import { ConditionControl } from '../../controls/index.ts';
import { openFiles } from '../../files/index.ts';
import { Segments } from '../../kit/index.ts';
import { changeSlope, slope, t } from '../../state/index.ts';
import { FileChoice } from './file-choice.tsx';

/** The ground the skis run on. */
export function HillControls(): JSX.Element {
  const { ground: wanted, groundFile, programme } = slope.value;
  const rhythm = programme === 'rhythm';
  const ground = rhythm ? 'even' : wanted;
  return (
    <details class="control-group" open>
      <summary>{t('slope.hill')}</summary>
      {rhythm ? (
        <p class="reading-hint">{t('slope.rhythmHillEven')}</p>
      ) : (
        <Segments
          label={t('slope.ground')}
          labelHidden
          value={ground}
          options={[
            { value: 'even', label: t('slope.even') },
            { value: 'roller', label: t('slope.rollers'), title: t('slope.inventedGround') },
            { value: 'steepening', label: t('slope.steeper'), title: t('slope.inventedGround') },
            { value: 'file', label: t('slope.csv') },
          ]}
          onInput={next => changeSlope(t('slope.ground'), { ground: next })}
        />
      )}
      {ground === 'even' && <ConditionControl field="slopeDeg" />}
      {(ground === 'roller' || ground === 'steepening') && (
        <p class="reading-hint">{t('slope.inventedHill')}</p>
      )}
      {ground === 'file' && (
        <FileChoice
          name={groundFile?.name}
          hint={t('slope.groundFileHint')}
          onOpen={() => void openFiles('slope')}
        />
      )}
    </details>
  );
}
