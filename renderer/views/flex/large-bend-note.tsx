import type { JSX } from 'preact';
import { formatQuantity } from '../../format/index.ts';
import { view } from '../../state/index.ts';
import type { Bendable } from './beams.ts';
import { setupOf } from './bench.ts';
import { useWorked } from './use-worked.ts';

/** Says when the bend is no longer small enough for the number over it, and what large-bend theory gives. */
export function LargeBendNote({ pair, load }: { pair: Bendable; load: number }): JSX.Element {
  const setup = setupOf(pair.ski, load);
  const { ski } = pair;
  const key = JSON.stringify([pair.id, setup, ski.bending]);
  const answer = useWorked(key, async jobs => await jobs.large(ski, setup));
  return (
    <p class="reading-hint">{answer ? words(answer.value) : 'Checking whether the bend is a small one …'}</p>
  );
}

function words(large: { deflection: number; offBy: number; beyondSmall: boolean } | null): string {
  if (!large) return 'On these supports the load is past what large-bend theory can settle.';
  const off = `${(100 * Math.abs(large.offBy)).toFixed(1)} %`;
  if (!large.beyondSmall) return `By small-bend theory, which is within 2 % here (off by ${off}).`;
  const { text } = formatQuantity(large.deflection, 'deflection', {
    system: view.value.system,
    decimals: view.value.system === 'metric' ? 1 : undefined,
  });
  return `By small-bend theory, ${off} too ${large.offBy > 0 ? 'large' : 'small'} here: large-bend theory gives ${text}.`;
}
