import type { RackTune } from '../../core/pair/index.ts';
import { type RackEntry, t } from '../state/index.ts';

const DAY = 86_400_000;
const WAXES = ['cold', 'medium', 'warm'];
const STRUCTURES = ['fine', 'medium', 'coarse'];

/** An invented tune log up to `today` for invented pairs: some freshly done, some due, a few never logged. */
export function demoLog(entries: readonly RackEntry[], today: string): RackTune[] {
  const daysAgo = (days: number) =>
    new Date(Date.parse(`${today}T00:00:00Z`) - days * DAY).toISOString().slice(0, 10);
  return entries.flatMap(({ pair }, at): RackTune[] => {
    if (!pair.demo || at % 9 === 8) return [];
    const named = { pairId: pair.id, pairName: pair.name, demo: true };
    return [
      {
        ok: true,
        entry: {
          ...named,
          date: daysAgo((at * 7) % 11),
          sideAngleDeg: pair.edges?.sideAngleDeg ?? 87,
          baseBevelDeg: pair.edges?.baseBevelDeg ?? 0.5,
          structure: STRUCTURES[at % 3],
          note: t('squad.demoEntry'),
        },
      },
      {
        ok: true,
        entry: { ...named, date: daysAgo((at * 5) % 7), wax: WAXES[at % 3], note: t('squad.demoEntry') },
      },
    ];
  });
}
