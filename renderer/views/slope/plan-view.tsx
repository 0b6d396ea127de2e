import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { duration } from '../../answers/index.ts';
import type { PictureState } from '../../kit/index.ts';
import { t } from '../../state/index.ts';
import { flatPlayer, usePlayer } from './clock.ts';
import { PlanFigure } from './plan-figure.tsx';

/** The paths from above in the place of the hill, for machines that draw no WebGL; the clock is its own. */
export function PlanView({ why, again }: { why: string; again: PictureState['again'] }): JSX.Element {
  useEffect(() => {
    const player = flatPlayer(() => duration.value);
    usePlayer(player);
    return () => {
      player.stop();
      usePlayer(null);
    };
  }, []);
  return (
    <div class="plan">
      <p class="plan-note" role="note">
        {t('slope.flatPlan', { why })}{' '}
        {again && (
          <button type="button" class="quiet" onClick={again}>
            {t('kit.tryAgain')}
          </button>
        )}
      </p>
      <PlanFigure />
    </div>
  );
}
