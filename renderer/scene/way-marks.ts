import type { SceneTrack } from './track-at.ts';

/** Skis and mass nearer to each other than this are one way to the eye, m. */
const APART = 0.3;

/** Rows where the ways of skis and mass are furthest apart, one a turn: where they are told from each other. */
export function wayMarks({ x, y, massX, massY, lean }: SceneTrack): number[] {
  if (!massX || !massY) return [];
  const marks: number[] = [];
  let best = -1;
  let most = APART;
  for (let i = 0; i < x.length; i++) {
    if (i > 0 && lean[i] > 0 !== lean[i - 1] > 0) {
      if (best >= 0) marks.push(best);
      best = -1;
      most = APART;
    }
    const apart = Math.hypot(massX[i] - x[i], massY[i] - y[i]);
    if (apart <= most) continue;
    most = apart;
    best = i;
  }
  if (best >= 0) marks.push(best);
  return marks;
}
