/** What the scene reads of a run: columns of one length, SI and radians. A `Track` of the run model fits. */
export interface SceneTrack {
  readonly t: ArrayLike<number>;
  /** Across the slope, positive to the right looking down. */
  readonly x: ArrayLike<number>;
  /** Along the ground down the fall line. */
  readonly y: ArrayLike<number>;
  /** Of the skier's mass, seen square to the slope; its way is drawn where it is known. */
  readonly massX?: ArrayLike<number>;
  readonly massY?: ArrayLike<number>;
  /** Skis to the mass, m; the figure has one of its own where it is not known. */
  readonly leg?: ArrayLike<number>;
  /** Of the velocity from the fall line, positive to the right. */
  readonly heading: ArrayLike<number>;
  readonly speed: ArrayLike<number>;
  /** Signed, positive in right turns. */
  readonly edge: ArrayLike<number>;
  /** Signed like `edge`. */
  readonly lean: ArrayLike<number>;
  /** Mean angle at which the edge slips. */
  readonly slip: ArrayLike<number>;
  readonly load: ArrayLike<number>;
  readonly radius: ArrayLike<number>;
  /** 1 slipping, 3 airborne, everything else on its edge or flat. */
  readonly phase: ArrayLike<number>;
}

export const SLIPPING = 1;
export const AIRBORNE = 3;

/** One instant of a track, written in place. */
export interface TrackState {
  row: number;
  x: number;
  y: number;
  heading: number;
  speed: number;
  edge: number;
  lean: number;
  load: number;
  /** NaN where the track has none. */
  leg: number;
  phase: number;
}

export function trackState(): TrackState {
  return { row: 0, x: 0, y: 0, heading: 0, speed: 0, edge: 0, lean: 0, load: 0, leg: Number.NaN, phase: 0 };
}

/** Last row not later than `t`, by halving. */
export function rowAt(times: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = times.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle] <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The track at time `t`, straight between rows and held at its ends. */
export function trackAt(track: SceneTrack, t: number, out: TrackState): TrackState {
  const row = rowAt(track.t, t);
  const next = Math.min(row + 1, track.t.length - 1);
  const span = track.t[next] - track.t[row];
  const share = span > 0 ? Math.min(1, Math.max(0, (t - track.t[row]) / span)) : 0;
  out.row = row;
  out.x = track.x[row] + share * (track.x[next] - track.x[row]);
  out.y = track.y[row] + share * (track.y[next] - track.y[row]);
  out.heading = track.heading[row] + share * (track.heading[next] - track.heading[row]);
  out.speed = track.speed[row] + share * (track.speed[next] - track.speed[row]);
  out.edge = track.edge[row] + share * (track.edge[next] - track.edge[row]);
  out.lean = track.lean[row] + share * (track.lean[next] - track.lean[row]);
  out.load = track.load[row] + share * (track.load[next] - track.load[row]);
  out.leg = track.leg ? track.leg[row] + share * (track.leg[next] - track.leg[row]) : Number.NaN;
  out.phase = track.phase[row];
  return out;
}

/** Rows spaced at least `step` metres along the track, first and last included. */
export function spacedRows(track: SceneTrack, step: number): Int32Array {
  const rows: number[] = [];
  const last = track.t.length - 1;
  let since = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= last; i++) {
    if (i > 0) since += Math.hypot(track.x[i] - track.x[i - 1], track.y[i] - track.y[i - 1]);
    if (since >= step || i === last) {
      rows.push(i);
      since = 0;
    }
  }
  return Int32Array.from(rows);
}
