import type { Sentence } from '../../core/language/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { dynamicMoment, explainMoment, Phase, type SlopeProfile, type Track } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import type { Working } from '../../core/working/index.ts';

/**
 * The chain from edge angle to hold at the moment of the greatest load on an edge, from the dynamic balance. Empty
 * when the ski is on no edge.
 */
export function runWorkings(
  ski: Ski,
  track: Track,
  of: { readonly mass: number; readonly profile: SlopeProfile },
): Working[] {
  const row = hardestRow(track);
  if (row === null) return [];
  const moment = dynamicMoment(track, row, of);
  const [first, ...rest] = explainMoment({
    moment,
    mass: of.mass,
    baseBevel: ski.baseBevel,
    contactLength: ski.contactLength,
    sidecutRadius: sidecut(ski).radius,
  });
  const note: Sentence = {
    key: 'run.note.hardest',
    values: {
      time: { quantity: 'time', value: track.t[row] },
      edge: track.phase[row] === Phase.Holding ? 'holds' : 'slips',
    },
  };
  return [{ ...first, note: [note, first.note ?? []].flat() }, ...rest];
}

function hardestRow({ t, phase, load }: Track): number | null {
  let hardest: number | null = null;
  for (let row = 0; row < t.length; row++) {
    const onEdge = phase[row] === Phase.Holding || phase[row] === Phase.Slipping;
    if (onEdge && (hardest === null || load[row] > load[hardest])) hardest = row;
  }
  return hardest;
}
