import type { JSX } from 'preact';
import { SQUAD_CAUTIONS } from '../help/index.ts';
import { t } from '../state/index.ts';

export function SquadCautions(): JSX.Element {
  return (
    <ul class="squad-cautions" aria-label={t('common.cautions')}>
      {SQUAD_CAUTIONS.map(caution => (
        <li key={caution}>{t(caution)}</li>
      ))}
    </ul>
  );
}
