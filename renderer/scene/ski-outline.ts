/** A ski as drawn: its edge along the contact length and what lies beyond it. Metres. */
export interface SkiForm {
  /** Stations from the rear contact point, ascending. */
  readonly x: ArrayLike<number>;
  /** Half width at each station. */
  readonly halfWidth: ArrayLike<number>;
  readonly contactLength: number;
  /** Overall length. */
  readonly length: number;
  /** From the rear contact point. */
  readonly bootCentre: number;
  /** Boot sole length; 0.30 m when absent. */
  readonly soleLength?: number;
}

/** Sampled outline: one value a station, tail end first. */
export interface SkiOutline {
  /** From the rear contact point, m; negative over the tail, beyond the contact length over the shovel. */
  readonly along: Float64Array;
  readonly halfWidth: Float64Array;
  /** Upturn of shovel and tail over the base line, m. */
  readonly rise: Float64Array;
  readonly thickness: Float64Array;
}

export const TAIL_STEPS = 10;
export const CONTACT_STEPS = 80;
const SHOVEL_STEPS = 20;
export const STATIONS = TAIL_STEPS + CONTACT_STEPS + SHOVEL_STEPS + 1;

const END_THICKNESS = 0.008;
const UNDERFOOT_THICKNESS = 0.018;
const SHOVEL_SHARE = 0.72;

/** Linear interpolation in ascending stations, held constant outside. */
export function sampleAt(x: ArrayLike<number>, values: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (last < 0) return 0;
  if (at <= x[0]) return values[0];
  if (at >= x[last]) return values[last];
  let low = 0;
  let high = last - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle - 1;
  }
  const share = (at - x[low]) / (x[low + 1] - x[low]);
  return values[low] + share * (values[low + 1] - values[low]);
}

function smooth(edge0: number, edge1: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - edge0) / (edge1 - edge0)));
  return t * t * (3 - 2 * t);
}

/**
 * Outline of the whole ski. The contact length is the true edge; the shovel and the tail beyond it are a plain
 * drawing, since a pair file gives only the overall length.
 * @throws RangeError when the arrays differ in length or the overall length is below the contact length.
 */
export function skiOutline(form: SkiForm): SkiOutline {
  if (form.x.length !== form.halfWidth.length || form.x.length < 2) {
    throw new RangeError(
      `ski outline: ${form.x.length} stations and ${form.halfWidth.length} half widths; need two or more of each`,
    );
  }
  if (!(form.length >= form.contactLength)) {
    throw new RangeError(`ski length ${form.length} m is below the contact length ${form.contactLength} m`);
  }
  const beyond = Math.max(form.length - form.contactLength, 0.02);
  const shovel = beyond * SHOVEL_SHARE;
  const tail = beyond - shovel;
  const along = new Float64Array(STATIONS);
  const halfWidth = new Float64Array(STATIONS);
  const rise = new Float64Array(STATIONS);
  const thickness = new Float64Array(STATIONS);
  const tailHalf = sampleAt(form.x, form.halfWidth, 0);
  const tipHalf = sampleAt(form.x, form.halfWidth, form.contactLength);
  for (let i = 0; i < STATIONS; i++) {
    if (i < TAIL_STEPS) {
      // Stations crowd towards the end, where the outline turns fastest.
      const u = Math.sin(((1 - i / TAIL_STEPS) * Math.PI) / 2);
      along[i] = -tail * u;
      halfWidth[i] = Math.max(tailHalf * (1 - u ** 6) ** 0.4, 1e-4);
      rise[i] = Math.min(0.012, tail * 0.25) * u * u;
      thickness[i] = END_THICKNESS - 0.002 * u;
    } else if (i <= TAIL_STEPS + CONTACT_STEPS) {
      const s = (i - TAIL_STEPS) / CONTACT_STEPS;
      const x = s * form.contactLength;
      along[i] = x;
      halfWidth[i] = sampleAt(form.x, form.halfWidth, x);
      const foot = form.bootCentre / form.contactLength;
      const up = smooth(0, Math.max(foot - 0.1, 0.05), s) * smooth(1, Math.min(foot + 0.1, 0.95), s);
      thickness[i] = END_THICKNESS + (UNDERFOOT_THICKNESS - END_THICKNESS) * up;
    } else {
      const u = Math.sin((((i - TAIL_STEPS - CONTACT_STEPS) / SHOVEL_STEPS) * Math.PI) / 2);
      along[i] = form.contactLength + shovel * u;
      halfWidth[i] = Math.max(tipHalf * (1 - u ** 2.6) ** 0.5, 1e-4);
      rise[i] = Math.min(0.06, shovel * 0.5) * u ** 2.2;
      thickness[i] = END_THICKNESS - 0.003 * u;
    }
  }
  return { along, halfWidth, rise, thickness };
}
