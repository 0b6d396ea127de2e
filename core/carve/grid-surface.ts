/** How much more sharply than its neighbours a parabola may bend before it is taken to run over a break. */
const SHARPLY = 4;

/**
 * Bicubic Hermite surface through values on a rectangular grid (rows `u`, columns `w`, both ascending and at
 * least two long; row-major), once continuously differentiable; at the border outside. A slope comes from the
 * parabola through a node and its two neighbours; where that one runs over a break in the values, from the
 * calmest of the parabolas to either side (the choice of stencil of Harten, Engquist, Osher & Chakravarthy,
 * J. Comput. Phys. 71 (1987), from memory), so that a break spoils its own cell only.
 */
export class GridSurface {
  readonly #u: Float64Array;
  readonly #w: Float64Array;
  readonly #values: Float64Array;
  readonly #byU: Float64Array;
  readonly #byW: Float64Array;
  readonly #byUW: Float64Array;
  #row = 0;
  #column = 0;

  constructor(u: Float64Array, w: Float64Array, values: Float64Array) {
    this.#u = u;
    this.#w = w;
    this.#values = values;
    this.#byU = new Float64Array(values.length);
    this.#byW = new Float64Array(values.length);
    this.#byUW = new Float64Array(values.length);
    for (let i = 0; i < u.length; i++) steadySlopes(w, values, i * w.length, 1, this.#byW);
    for (let j = 0; j < w.length; j++) {
      steadySlopes(u, values, j, w.length, this.#byU);
      steadySlopes(u, this.#byW, j, w.length, this.#byUW);
    }
  }

  /** Index of the last cell asked about, counted along the rows of cells. */
  get cell(): number {
    return this.#row * (this.#w.length - 1) + this.#column;
  }

  at(u: number, w: number): number {
    const x = clamp(u, this.#u[0], this.#u[this.#u.length - 1]);
    const y = clamp(w, this.#w[0], this.#w[this.#w.length - 1]);
    // Successive questions are close together, so the last cell is nearly always right.
    this.#row = cellFrom(this.#u, x, this.#row);
    this.#column = cellFrom(this.#w, y, this.#column);
    const i = this.#row;
    const j = this.#column;
    const hu = this.#u[i + 1] - this.#u[i];
    const hw = this.#w[j + 1] - this.#w[j];
    const s = (x - this.#u[i]) / hu;
    const t = (y - this.#w[j]) / hw;
    const a = i * this.#w.length + j;
    const b = a + this.#w.length;
    const s1 = s * s * (3 - 2 * s);
    return (
      (1 - s1) * along(this.#values, this.#byW, a, t, hw) +
      s1 * along(this.#values, this.#byW, b, t, hw) +
      s * (1 - s) * (1 - s) * hu * along(this.#byU, this.#byUW, a, t, hw) +
      s * s * (s - 1) * hu * along(this.#byU, this.#byUW, b, t, hw)
    );
  }
}

/** Cubic Hermite from entry `a` to the next. */
function along(values: Float64Array, slopes: Float64Array, a: number, t: number, h: number): number {
  const t1 = t * t * (3 - 2 * t);
  return (
    (1 - t1) * values[a] +
    t1 * values[a + 1] +
    t * (1 - t) * (1 - t) * h * slopes[a] +
    t * t * (t - 1) * h * slopes[a + 1]
  );
}

function steadySlopes(
  axis: Float64Array,
  values: Float64Array,
  first: number,
  stride: number,
  out: Float64Array,
): void {
  const n = axis.length;
  const secant = (i: number) =>
    (values[first + (i + 1) * stride] - values[first + i * stride]) / (axis[i + 1] - axis[i]);
  /** Half the second derivative of the parabola about node i. */
  const bend = (i: number) =>
    i > 0 && i < n - 1 ? (secant(i) - secant(i - 1)) / (axis[i + 1] - axis[i - 1]) : Number.NaN;
  for (let i = 0; i < n; i++) {
    const centre = bend(i);
    const before = bend(i - 1);
    const after = bend(i + 1);
    const calmest = !(Math.abs(after) < Math.abs(before)) ? before : after;
    const broken = !(Math.abs(centre) <= SHARPLY * Math.abs(calmest));
    let slope: number;
    if (Number.isNaN(centre) ? Number.isNaN(calmest) : !broken || Number.isNaN(calmest)) {
      slope = Number.isNaN(centre) ? secant(0) : secant(i - 1) + centre * (axis[i] - axis[i - 1]);
    } else if (i < n - 1 && (i === 0 || calmest === after)) {
      slope = secant(i) - after * (axis[i + 1] - axis[i]);
    } else {
      slope = secant(i - 1) + before * (axis[i] - axis[i - 1]);
    }
    out[first + i * stride] = slope;
  }
}

function cellFrom(axis: Float64Array, value: number, last: number): number {
  let i = last;
  while (i > 0 && value < axis[i]) i--;
  while (i < axis.length - 2 && value >= axis[i + 1]) i++;
  return i;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
