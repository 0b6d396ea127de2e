import type { JSX } from 'preact';
import type { Bendable } from './beams.ts';
import { setupOf } from './bench.ts';
import { useWorked } from './use-worked.ts';

/** Whether the bend is still small enough for the numbers beside it. */
export function LargeBendNote({ pair, load }: { pair: Bendable; load: number }): JSX.Element {
  const setup = setupOf(pair.ski, load);
  const { ski } = pair;
  const key = JSON.stringify([pair.id, setup, ski.bending]);
  const answer = useWorked(key, jobs => jobs.large(ski, setup));
  return <p class="reading-hint">{answer?.value ?? 'Checking whether the bend is a small one …'}</p>;
}
