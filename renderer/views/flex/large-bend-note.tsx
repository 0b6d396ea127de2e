import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { type LargeBendAnswer, largeBend } from '../../answers/index.ts';
import { t, view } from '../../state/index.ts';

/** Says when the bend is no longer small enough for the number over it, and what large-bend theory gives. */
export function LargeBendNote({ pair: { id } }: { pair: { readonly id: string } }): JSX.Element {
  const { value, error } = largeBend.value;
  return <p class="reading-hint">{error ?? (value?.id === id ? words(value) : t('flex.checkingBend'))}</p>;
}

function words(large: LargeBendAnswer): string {
  if (!large.ok) return t('flex.pastLargeBendHere');
  const off = `${(100 * Math.abs(large.offBy)).toFixed(1)} %`;
  if (!large.beyondSmall) return t('flex.smallBendHolds', { off });
  const { text } = formatQuantity(large.deflection, 'deflection', {
    system: view.value.system,
    decimals: view.value.system === 'metric' ? 1 : undefined,
  });
  return t('flex.smallBendOff', { off, way: large.offBy > 0 ? 'large' : 'small', deflection: text });
}
