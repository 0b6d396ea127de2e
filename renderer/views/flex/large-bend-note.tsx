import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { type LargeBendAnswer, largeBend } from '../../answers/index.ts';
import { view } from '../../state/index.ts';

/** Says when the bend is no longer small enough for the number over it, and what large-bend theory gives. */
export function LargeBendNote({ pair: { id } }: { pair: { readonly id: string } }): JSX.Element {
  const { value, error } = largeBend.value;
  return (
    <p class="reading-hint">
      {error ?? (value?.id === id ? words(value) : 'Checking whether the bend is a small one …')}
    </p>
  );
}

function words(large: LargeBendAnswer): string {
  if (!large.ok) return 'On these supports the load is past what large-bend theory can settle.';
  const off = `${(100 * Math.abs(large.offBy)).toFixed(1)} %`;
  if (!large.beyondSmall) return `By small-bend theory, which is within 2 % here (off by ${off}).`;
  const { text } = formatQuantity(large.deflection, 'deflection', {
    system: view.value.system,
    decimals: view.value.system === 'metric' ? 1 : undefined,
  });
  return `By small-bend theory, ${off} too ${large.offBy > 0 ? 'large' : 'small'} here: large-bend theory gives ${text}.`;
}
