import type { JSX } from 'preact';
import { ghostPair } from '../../answers/index.ts';
import { Segments } from '../../kit/index.ts';
import { activePair, changeSlope, chosenPairs, t } from '../../state/index.ts';

/** Which other chosen pair goes along at the same time. */
export function GhostChoice(): JSX.Element | null {
  const others = chosenPairs.value.filter(pair => pair.id !== activePair.value?.id);
  if (others.length === 0) return null;
  return (
    <Segments
      label={t('slope.compareWith')}
      value={ghostPair.value?.id ?? ''}
      options={[
        { value: '', label: t('slope.noGhost') },
        ...others.map(pair => ({ value: pair.id, label: pair.mark.letter, title: pair.name })),
      ]}
      onInput={id => changeSlope(t('slope.compareWith'), { ghost: id || null })}
    />
  );
}
