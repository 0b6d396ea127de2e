/** A load-weighted quadratic fit of the edge's lateral position in the snow plane. */
export interface TrackFit {
  /** 1/m; 0 where the load does not determine one. */
  readonly curvature: number;
  /** How much the load's spread says about the curvature, m⁴. */
  readonly information: number;
  /**
   * Load-weighted means about the load's centre, SI: of the second, third and fourth power of the distance x
   * along the ski, and of the lateral position times x and times x².
   */
  readonly moments: readonly [m2: number, m3: number, m4: number, p: number, q: number];
}

/** What a part of the track says by itself. */
export interface TrackPart {
  /** m; where `tooShort`, drawn towards the whole edge's, the more the shorter. */
  readonly radius: number;
  /** True where the part's load sits on too short a stretch to tell a radius. */
  readonly tooShort: boolean;
  readonly fit: TrackFit;
  /** What its own fit counts in `radius` beside the whole edge's, 0 to 1. */
  readonly share: number;
}

const UNTOLD: TrackFit = { curvature: 0, information: 0, moments: [0, 0, 0, 0, 0] };

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
  if (!(weight > 0)) return UNTOLD;
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
  if (!(m2 > 0)) return UNTOLD;
  // Normal equations of a + b·dx + c·dx² about the load's centre, a and then b eliminated.
  const information = m4 - m2 * m2 - (m3 * m3) / m2;
  if (!(information > 0)) return UNTOLD;
  return {
    curvature: (2 * (xxy - (m3 * xy) / m2)) / information,
    information,
    moments: [m2, m3, m4, xy, xxy],
  };
}

/** Information of a load spread evenly over a stretch of this share of the contact length, over L⁴: s⁴/180. */
const spreadOver = (share: number) => share ** 4 / 180;
const ENOUGH = spreadOver(0.35);
const PRIOR = spreadOver(0.18);

/**
 * Radius of one part of the track of a ski of this contact length (m). A ski too stiff for its load stands on its
 * ends alone: a part whose load sits on a short stretch does not determine a curvature, and the whole edge's takes over
 * gradually.
 */
export function trackPart(fit: TrackFit, whole: TrackFit, length: number): TrackPart {
  const information = fit.information / length ** 4;
  if (information >= ENOUGH) return { radius: 1 / fit.curvature, tooShort: false, fit, share: 1 };
  const prior = PRIOR * (1 - information / ENOUGH) ** 2;
  const share = information / (information + prior);
  const radius = 1 / (share * fit.curvature + (1 - share) * whole.curvature);
  return { radius, tooShort: true, fit, share };
}
