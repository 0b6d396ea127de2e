import { FieldError } from '../fault/index.ts';
import {
  fitSegment,
  gatheredShare,
  type Segment,
  type SegmentRule,
  segmentRule,
} from './clothoid-segment.ts';
import type { Gate } from './gates.ts';

/**
 * A line through a set: arcs at the gates joined by clothoids, curvature continuous throughout, passing each
 * turning pole on its outside at a stated clearance. x across, y down the slope, m; heading from the fall
 * line, rad, positive to the right; curvature 1/m, positive where the line turns right.
 */
export interface Line {
  readonly s: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly heading: Float64Array;
  readonly curvature: Float64Array;
  /** Sample nearest each gate's turning pole, in gate order. */
  readonly gateSamples: Int32Array;
  /** +1 right, −1 left, in gate order. */
  readonly turns: Int8Array;
  readonly length: number;
}

export interface LineOptions {
  /** Distance between the line and each turning pole, m. */
  readonly clearance?: number;
  /** Share of each stretch between gates that is arc at either end, 0 to 0.45. */
  readonly arcShare?: number;
  /** Greatest distance between samples, m. */
  readonly step?: number;
}

/** Draws the line. Throws `FieldError` for a set no forward line passes. */
export function lineThroughGates(gates: readonly Gate[], options: LineOptions = {}): Line {
  const clearance = options.clearance ?? 0.4;
  const rule = segmentRule(options.arcShare ?? 0.25);
  if (gates.length < 2) {
    throw new FieldError({ field: 'gates', found: gates.length, accepted: { key: 'course.twoGates' } });
  }
  const turns = gateTurns(gates);
  const poles = withEnds(gates);
  const n = poles.length;
  const x = Float64Array.from(poles, pole => pole.x);
  const y = Float64Array.from(poles, pole => pole.y);
  const heading = Float64Array.from({ length: n }, (_, i) => {
    const before = poles[Math.max(0, i - 1)];
    const after = poles[Math.min(n - 1, i + 1)];
    return Math.atan2(after.x - before.x, after.y - before.y);
  });
  const segments: Segment[] = Array.from({ length: n - 1 }, () => ({
    length: 0,
    startCurvature: 0,
    endCurvature: 0,
  }));
  for (let round = 0; round < 60; round++) {
    let moved = 0;
    for (let i = 1; i < n - 1; i++) {
      const outside = -turns[i - 1] * clearance;
      const viaX = poles[i].x + outside * Math.cos(heading[i]);
      const viaY = poles[i].y - outside * Math.sin(heading[i]);
      moved = Math.max(moved, Math.abs(viaX - x[i]), Math.abs(viaY - y[i]));
      x[i] = viaX;
      y[i] = viaY;
    }
    if (round > 0 && moved < 1e-9) break;
    solveHeadings(rule, x, y, heading, segments, gates);
  }
  return sample(rule, x, y, heading, segments, turns, options.step ?? 0.5);
}

/** The side each gate turns to: as written, else as the neighbouring poles show, else opposite the last. */
export function gateTurns(gates: readonly Gate[]): Int8Array {
  if (gates.length === 0) return new Int8Array(0);
  const poles = withEnds(gates);
  const turns = new Int8Array(gates.length);
  gates.forEach((gate, i) => {
    const [before, at, after] = [poles[i], poles[i + 1], poles[i + 2]];
    const change = Math.atan2(after.x - at.x, after.y - at.y) - Math.atan2(at.x - before.x, at.y - before.y);
    turns[i] = gate.turn ?? (Math.abs(change) > 0.02 ? Math.sign(change) : i > 0 ? -turns[i - 1] : 1);
  });
  return turns;
}

/** One point a gate interval above the first gate and one below the last, on the middle of the set there. */
function withEnds(gates: readonly Gate[]): { x: number; y: number }[] {
  const last = gates.length - 1;
  const middle = (a: number, b: number): number => (gates[a].x + gates[b].x) / 2;
  const second = Math.min(1, last);
  return [
    { x: middle(0, second), y: gates[0].y - Math.max(gates[second].y - gates[0].y, 2) },
    ...gates,
    {
      x: middle(last, last - second),
      y: gates[last].y + Math.max(gates[last].y - gates[last - second].y, 2),
    },
  ];
}

/**
 * Headings at all points such that curvature is continuous at each gate and nought at both ends: Newton's
 * method on a tridiagonal system, with derivatives of each segment by central differences.
 */
function solveHeadings(
  rule: SegmentRule,
  x: Float64Array,
  y: Float64Array,
  heading: Float64Array,
  segments: Segment[],
  gates: readonly Gate[],
): void {
  const n = heading.length;
  const lower = new Float64Array(n);
  const diagonal = new Float64Array(n);
  const upper = new Float64Array(n);
  const residual = new Float64Array(n);
  const trial: Segment = { length: 0, startCurvature: 0, endCurvature: 0 };
  const h = 1e-6;
  for (let round = 0; round < 60; round++) {
    lower.fill(0);
    diagonal.fill(0);
    upper.fill(0);
    residual.fill(0);
    for (let i = 0; i < n - 1; i++) {
      const dx = x[i + 1] - x[i];
      const dy = y[i + 1] - y[i];
      const chord = Math.hypot(dx, dy);
      const bearing = Math.atan2(dx, dy);
      const fitTo = (from: number, to: number, out: Segment): void => {
        if (!(chord > 0.2) || !fitSegment(rule, chord, bearing, from, to, out)) {
          const label = gates[Math.min(i, gates.length - 1)].label;
          throw new FieldError({
            field: 'gates',
            found: label,
            accepted: { key: 'course.gatesFurtherDown' },
            because: { key: 'course.noLineToGate', values: { gate: label } },
          });
        }
      };
      fitTo(heading[i], heading[i + 1], segments[i]);
      residual[i] -= segments[i].startCurvature;
      residual[i + 1] += segments[i].endCurvature;
      for (const end of [0, 1]) {
        const column = i + end;
        const a = end === 0 ? h : 0;
        const b = end === 0 ? 0 : h;
        fitTo(heading[i] + a, heading[i + 1] + b, trial);
        const start = trial.startCurvature;
        const finish = trial.endCurvature;
        fitTo(heading[i] - a, heading[i + 1] - b, trial);
        const dStart = (start - trial.startCurvature) / (2 * h);
        const dEnd = (finish - trial.endCurvature) / (2 * h);
        if (column === i) {
          diagonal[i] -= dStart;
          lower[i + 1] += dEnd;
        } else {
          upper[i] -= dStart;
          diagonal[i + 1] += dEnd;
        }
      }
    }
    let worst = 0;
    for (let i = 0; i < n; i++) worst = Math.max(worst, Math.abs(residual[i]));
    if (worst < 1e-10) return;
    for (let i = 1; i < n; i++) {
      const share = lower[i] / diagonal[i - 1];
      diagonal[i] -= share * upper[i - 1];
      residual[i] -= share * residual[i - 1];
    }
    for (let i = n - 1; i >= 0; i--) {
      residual[i] = (residual[i] - (i < n - 1 ? upper[i] * residual[i + 1] : 0)) / diagonal[i];
    }
    let largest = 0;
    for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(residual[i]));
    const damping = Math.min(1, 0.3 / largest);
    for (let i = 0; i < n; i++) heading[i] -= damping * residual[i];
  }
  throw new FieldError({
    field: 'gates',
    found: gates.length,
    accepted: { key: 'course.gatesFurtherApart' },
    because: { key: 'course.noSmoothLine' },
  });
}

function sample(
  rule: SegmentRule,
  x: Float64Array,
  y: Float64Array,
  heading: Float64Array,
  segments: readonly Segment[],
  turns: Int8Array,
  step: number,
): Line {
  const parts = segments.map(segment => Math.max(4, Math.ceil(segment.length / step)));
  const total = parts.reduce((sum, part) => sum + part, 1);
  const line = {
    s: new Float64Array(total),
    x: new Float64Array(total),
    y: new Float64Array(total),
    heading: new Float64Array(total),
    curvature: new Float64Array(total),
    gateSamples: new Int32Array(turns.length),
    turns,
    length: 0,
  };
  let at = 0;
  let s = 0;
  segments.forEach((segment, k) => {
    const { length, startCurvature, endCurvature } = segment;
    const change = endCurvature - startCurvature;
    const headingAt = (u: number): number =>
      heading[k] + length * (startCurvature * u + change * gatheredShare(u, rule.arcShare));
    let px = x[k];
    let py = y[k];
    for (let j = 0; j < parts[k]; j++) {
      const u = j / parts[k];
      const next = (j + 1) / parts[k];
      const ramp = (u - rule.arcShare) / (1 - 2 * rule.arcShare);
      line.s[at] = s + u * length;
      line.x[at] = px;
      line.y[at] = py;
      line.heading[at] = headingAt(u);
      line.curvature[at] = startCurvature + change * Math.max(0, Math.min(1, ramp));
      at++;
      // Simpson's rule on the heading; a step turns through a few degrees at most.
      const [a, b, c] = [headingAt(u), headingAt((u + next) / 2), headingAt(next)];
      const share = (length * (next - u)) / 6;
      px += share * (Math.sin(a) + 4 * Math.sin(b) + Math.sin(c));
      py += share * (Math.cos(a) + 4 * Math.cos(b) + Math.cos(c));
    }
    s += length;
    if (k < turns.length) line.gateSamples[k] = at;
  });
  const last = x.length - 1;
  line.s[at] = s;
  line.x[at] = x[last];
  line.y[at] = y[last];
  line.heading[at] = heading[last];
  line.curvature[at] = segments[last - 1].endCurvature;
  line.length = s;
  return line;
}
