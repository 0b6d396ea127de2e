import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, MeshBasicMaterial, Vector3 } from 'three';
import { type RibbonView, widenRibbon } from './ribbon-material.ts';
import type { SlopeFrame } from './slope-frame.ts';

/** A circular arc in the slope plane, run from `start`. Metres, radians. */
export interface ArcPath {
  readonly startX: number;
  readonly startY: number;
  /** Heading χ from the fall line at the start. */
  readonly heading: number;
  /** Turn radius; Infinity runs straight. */
  readonly radius: number;
  /** 1 when the heading grows along the arc, −1 when it falls. */
  readonly turn: 1 | -1;
  /** Length along the arc. */
  readonly length: number;
}

export interface PlanePoint {
  x: number;
  y: number;
  heading: number;
}

/** Point and heading after `s` metres of the arc. */
export function pointOnArc(arc: ArcPath, s: number, out: PlanePoint): PlanePoint {
  if (!Number.isFinite(arc.radius) || arc.radius > 1e5) {
    out.heading = arc.heading;
    out.x = arc.startX + s * Math.sin(arc.heading);
    out.y = arc.startY + s * Math.cos(arc.heading);
    return out;
  }
  const r = arc.turn * arc.radius;
  const heading = arc.heading + s / r;
  out.heading = heading;
  out.x = arc.startX + r * (Math.cos(arc.heading) - Math.cos(heading));
  out.y = arc.startY + r * (Math.sin(heading) - Math.sin(arc.heading));
  return out;
}

/** Centre of the arc's circle in the slope plane. */
export function arcCentre(arc: ArcPath): { x: number; y: number } {
  const r = arc.turn * arc.radius;
  return { x: arc.startX + r * Math.cos(arc.heading), y: arc.startY - r * Math.sin(arc.heading) };
}

/**
 * Radius of the arc that leaves (startX, startY) along `heading` and passes through (x, y): from the chord and
 * the angle it makes with the start tangent, R = c/(2 sin β). Infinity for a point straight ahead.
 */
export function radiusThrough(
  startX: number,
  startY: number,
  heading: number,
  x: number,
  y: number,
): { radius: number; turn: 1 | -1 } {
  const dx = x - startX;
  const dy = y - startY;
  const aside = dx * Math.cos(heading) - dy * Math.sin(heading);
  const chord2 = dx * dx + dy * dy;
  if (Math.abs(aside) < 1e-9) return { radius: Number.POSITIVE_INFINITY, turn: 1 };
  return { radius: chord2 / (2 * Math.abs(aside)), turn: aside > 0 ? 1 : -1 };
}

export interface ArcLook {
  readonly colour: string;
  /** Lengths drawn and left out in turn, m on the snow; empty is a full line. */
  readonly dash: readonly number[];
  /** Half width on the snow, m. */
  readonly halfWidth: number;
  /** Distance between strokes along it, m; every fifth is longer. Zero draws none. */
  readonly strokes: number;
  /** Thin spokes from the centre to start and end. */
  readonly spokes: boolean;
}

const STEP = 0.25;
const LIFT = 0.008;

interface Strip {
  position: number[];
  across: number[];
  share: number[];
  index: number[];
}

/** Pieces [from, to] of `length` that a dash pattern leaves drawn. */
export function dashPieces(length: number, dash: readonly number[]): [number, number][] {
  const period = dash.reduce((sum, d) => sum + d, 0);
  if (dash.length < 2 || !(period > 0)) return [[0, length]];
  const pieces: [number, number][] = [];
  let at = 0;
  for (let i = 0; at < length; i++) {
    const end = Math.min(length, at + dash[i % dash.length]);
    if (i % 2 === 0 && end > at) pieces.push([at, end]);
    at = end;
  }
  return pieces;
}

/** Ribbon geometry of an arc lying on the snow. */
export function arcGeometry(arc: ArcPath, look: ArcLook, frame: SlopeFrame): BufferGeometry {
  const strip: Strip = { position: [], across: [], share: [], index: [] };
  const p: PlanePoint = { x: 0, y: 0, heading: 0 };
  for (const [from, to] of dashPieces(arc.length, look.dash)) {
    const steps = Math.max(1, Math.ceil((to - from) / STEP));
    for (let i = 0; i <= steps; i++) {
      pointOnArc(arc, from + ((to - from) * i) / steps, p);
      rung(strip, frame, p.x, p.y, Math.cos(p.heading), -Math.sin(p.heading), look.halfWidth, i > 0);
    }
  }
  if (look.strokes > 0) {
    for (let i = 0; i * look.strokes <= arc.length + 1e-9; i++) {
      pointOnArc(arc, i * look.strokes, p);
      const reach = (i % 5 === 0 ? 10 : 5) * look.halfWidth;
      const ax = Math.cos(p.heading);
      const ay = -Math.sin(p.heading);
      const thin = look.halfWidth * 0.55;
      rung(strip, frame, p.x - ax * reach, p.y - ay * reach, -ay, ax, thin, false);
      rung(strip, frame, p.x + ax * reach, p.y + ay * reach, -ay, ax, thin, true);
    }
  }
  if (look.spokes && Number.isFinite(arc.radius) && arc.radius < 200) {
    const c = arcCentre(arc);
    for (const s of [0, arc.length]) {
      pointOnArc(arc, s, p);
      const length = arc.radius;
      const ux = (p.x - c.x) / length;
      const uy = (p.y - c.y) / length;
      for (const [from, to] of dashPieces(length, [0.3, 0.3])) {
        rung(strip, frame, c.x + ux * from, c.y + uy * from, -uy, ux, look.halfWidth * 0.4, false);
        rung(strip, frame, c.x + ux * to, c.y + uy * to, -uy, ux, look.halfWidth * 0.4, true);
      }
    }
  }
  return stripGeometry(strip);
}

/** Ribbon geometry of a way given point by point; dashes begin and end at its points. */
export function pathGeometry(
  count: number,
  x: (i: number) => number,
  y: (i: number) => number,
  dash: readonly number[],
  halfWidth: number,
  frame: SlopeFrame,
): BufferGeometry {
  const strip: Strip = { position: [], across: [], share: [], index: [] };
  const period = dash.reduce((sum, d) => sum + d, 0);
  const drawnAt = (s: number) => {
    if (dash.length < 2 || !(period > 0)) return true;
    let at = s % period;
    for (let k = 0; k < dash.length; k++) {
      if (at < dash[k]) return k % 2 === 0;
      at -= dash[k];
    }
    return true;
  };
  let travel = 0;
  let joined = false;
  for (let i = 0; i < count; i++) {
    const a = Math.max(0, i - 1);
    const b = Math.min(count - 1, i + 1);
    const dx = x(b) - x(a);
    const dy = y(b) - y(a);
    const run = Math.hypot(dx, dy) || 1;
    if (i > 0) travel += Math.hypot(x(i) - x(a), y(i) - y(a));
    rung(strip, frame, x(i), y(i), dy / run, -dx / run, halfWidth, joined);
    joined = drawnAt(travel);
  }
  return stripGeometry(strip);
}

function stripGeometry(strip: Strip): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(strip.position), 3));
  geometry.setAttribute('across', new BufferAttribute(new Float32Array(strip.across), 3));
  geometry.setAttribute('share', new BufferAttribute(new Float32Array(strip.share), 1));
  geometry.setIndex(new BufferAttribute(new Uint32Array(strip.index), 1));
  return geometry;
}

const point = new Vector3();

function rung(
  strip: Strip,
  frame: SlopeFrame,
  x: number,
  y: number,
  ax: number,
  ay: number,
  half: number,
  joined: boolean,
): void {
  const first = strip.share.length;
  frame.place(x, y, LIFT, point);
  strip.position.push(point.x, point.y, point.z, point.x, point.y, point.z);
  frame.direct(ax * half, ay * half, 0, y, point);
  strip.across.push(point.x, point.y, point.z, point.x, point.y, point.z);
  strip.share.push(-1, 1);
  if (joined) strip.index.push(first - 2, first - 1, first, first - 1, first + 1, first);
}

/** The drawn arc; its geometry is replaced when the arc changes. */
export class ArcLine {
  readonly mesh: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly setLeastWidth: (px: number) => void;

  constructor(view: RibbonView) {
    const material = new MeshBasicMaterial({
      side: DoubleSide,
      transparent: true,
      depthWrite: false,
      fog: false,
      polygonOffset: true,
      polygonOffsetFactor: -1,
      polygonOffsetUnits: -2,
    });
    this.setLeastWidth = widenRibbon(material, view, 2.5);
    this.mesh = new Mesh(new BufferGeometry(), material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 2;
  }

  set(arc: ArcPath, look: ArcLook, frame: SlopeFrame): void {
    this.mesh.geometry.dispose();
    this.mesh.geometry = arcGeometry(arc, look, frame);
    this.mesh.material.color.set(look.colour);
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
