import { type Pair, type Rack, rackOf } from '../../core/pair/index.ts';
import alder from './alder-188.pair.json' with { type: 'json' };
import birch from './birch-193.pair.json' with { type: 'json' };
import hazel from './hazel-130.pair.json' with { type: 'json' };
import juniper from './juniper-170.pair.json' with { type: 'json' };
import larch from './larch-155.pair.json' with { type: 'json' };
import maple from './maple-178.pair.json' with { type: 'json' };
import rowan from './rowan-165.pair.json' with { type: 'json' };
import willow from './willow-185.pair.json' with { type: 'json' };

/** Invented pairs of an invented club, every one marked `demo`; a test reads each as a file. */
export const demoPairs: Pair[] = [larch, rowan, alder, birch, hazel, maple, willow, juniper] as Pair[];

/** The same pairs as the rack of the juniors of Ostrelle, with a short invented tune log. */
export const demoRack: Rack = {
  ...rackOf('Juniors of Ostrelle (demo)', demoPairs),
  tuneLog: [
    tuned({
      pairId: 'larch-155',
      pairName: 'Larch 155',
      date: '2024-12-07',
      sideAngleDeg: 87,
      baseBevelDeg: 0.5,
    }),
    tuned({ pairId: 'birch-193', pairName: 'Birch 193', date: '2024-12-14', wax: 'cold', structure: 'fine' }),
  ],
};

function tuned(entry: { pairId: string; pairName: string; date: string; [field: string]: unknown }) {
  return { ok: true as const, entry: { ...entry, note: 'Invented demo entry.' } };
}
