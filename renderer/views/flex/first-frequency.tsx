import type { JSX } from 'preact';
import type { Working } from '../../../core/working/index.ts';
import { type Bendable, frequency, modesOf } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { inWords, t } from '../../state/index.ts';

/** First bending and torsion frequency of the free ski. */
export function FirstFrequency({ pair, uniform }: { pair: Bendable; uniform: () => Working[] }): JSX.Element {
  const own = modesOf([pair], false).found?.get(pair.id);
  const first = (kind: string) => own?.modes.find(mode => mode.kind === kind);
  const bending = first('bending 1');
  const torsion = first('torsion 1');
  return (
    <section class="reading-group">
      <h2>{t('flex.freeOf', { name: pair.name })}</h2>
      <Reading
        label={t('flex.firstBending')}
        measure="frequency"
        size="small"
        value={bending?.hz ?? null}
        why={own?.needs ? t('flex.needs', { needs: inWords(own.needs) }) : t('flex.workingOut')}
        working={() => [frequency(pair, bending!.hz, 'bending 1'), ...uniform()]}
      />
      {torsion && (
        <Reading
          label={t('flex.firstTorsion')}
          measure="frequency"
          size="small"
          value={torsion.hz}
          working={() => frequency(pair, torsion.hz, 'torsion 1')}
        />
      )}
    </section>
  );
}
