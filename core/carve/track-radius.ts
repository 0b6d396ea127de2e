/** A quadratic fit's curvature, 1/m, and how much the load's spread says about it, m⁴. */
export interface TrackFit {
  readonly curvature: number;
  readonly information: number;
}

/**
 * Curvature of the edge in the snow plane: the second derivative of the quadratic that fits η(x) best, each
 * point from `first` up to `last`, it not included, weighed by `weights` (the snow force on it). The information is the weighted variance of x² left after
 * a straight line in x; a load on one short stretch has next to none.
 */
export function fitTrack(
  x: Float64Array,
  lateral: Float64Array,
  weights: Float64Array,
  first: number,
  last: number,
): TrackFit {
  let weight = 0;
  let meanX = 0;
  let meanY = 0;
  for (let i = first; i < last; i++) {
    weight += weights[i];
    meanX += weights[i] * x[i];
    meanY += weights[i] * lateral[i];
  }
  if (!(weight > 0)) return { curvature: 0, information: 0 };
  meanX /= weight;
  meanY /= weight;
  let m2 = 0;
  let m3 = 0;
  let m4 = 0;
  let xy = 0;
  let xxy = 0;
  for (let i = first; i < last; i++) {
    const share = weights[i] / weight;
    const dx = x[i] - meanX;
    const dy = lateral[i] - meanY;
    const dx2 = dx * dx;
    m2 += share * dx2;
    m3 += share * dx2 * dx;
    m4 += share * dx2 * dx2;
    xy += share * dx * dy;
    xxy += share * dx2 * dy;
  }
  if (!(m2 > 0)) return { curvature: 0, information: 0 };
  // Normal equations of a + b·dx + c·dx² about the load's centre, a and then b eliminated.
  const information = m4 - m2 * m2 - (m3 * m3) / m2;
  if (!(information > 0)) return { curvature: 0, information: 0 };
  return { curvature: (2 * (xxy - (m3 * xy) / m2)) / information, information };
}

/** Information of a load spread evenly over a stretch of this share of the contact length, over L⁴: s⁴/180. */
const spreadOver = (share: number) => share ** 4 / 180;
const ENOUGH = spreadOver(0.35);
const PRIOR = spreadOver(0.18);

/**
 * Curvature of one part of the track. A ski too stiff for its load stands on its ends alone: a part whose load
 * sits on a short stretch does not determine a curvature, and the whole ski's takes over gradually.
 */
export function partCurvature(part: TrackFit, whole: TrackFit, length: number): number {
  const told = part.information / length ** 4;
  if (told >= ENOUGH) return part.curvature;
  const prior = PRIOR * (1 - told / ENOUGH) ** 2;
  return (told * part.curvature + prior * whole.curvature) / (told + prior);
}
