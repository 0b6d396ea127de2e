import {
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  DynamicDrawUsage,
  LinearFilter,
  LinearMipmapLinearFilter,
  Mesh,
  MeshLambertMaterial,
  RepeatWrapping,
  SRGBColorSpace,
  Vector3,
} from 'three';
import { type RibbonView, widenRibbon } from './ribbon-material.ts';
import type { SlopeFrame } from './slope-frame.ts';

export type GrooveKind = 'carve' | 'skid';

/** One point of the track left in the snow, slope coordinates. */
export interface GroovePoint {
  readonly x: number;
  readonly y: number;
  /** Full width of the trace, m. */
  readonly width: number;
  /** Depth, m. */
  readonly depth: number;
  readonly kind: GrooveKind;
}

/** Across the trench from left to right: share of the half width and how the wall faces (−1 right to left). */
const SECTION_SHARE = [-1, -0.6, -0.1, 0.5, 1];
const SECTION_TILT = [0, 1, 0.35, -1, 0];
const SECTION_LIFT = [0, 1, 0, 1, 0];
const SECTION = SECTION_SHARE.length;
/** Vertices and triangle corners of one segment. */
export const SEGMENT_VERTICES = 2 * SECTION;
export const SEGMENT_INDICES = (SECTION - 1) * 6;
/** The trace lies this far over the snow, so that it never flickers through it. */
const CLEARANCE = 0.006;

/**
 * Ring buffer of ribbon segments. Each segment owns its vertices, so a full ring simply writes over the oldest
 * one and the order in the buffer does not matter.
 */
export class GrooveRibbon {
  readonly geometry = new BufferGeometry();
  readonly capacity: number;
  readonly #position: BufferAttribute;
  readonly #across: BufferAttribute;
  readonly #share: BufferAttribute;
  readonly #normal: BufferAttribute;
  readonly #uv: BufferAttribute;
  #segments = 0;
  #travel = 0;
  #last: GroovePoint | null = null;
  readonly #tangent = new Vector3();
  readonly #side = new Vector3();
  readonly #up = new Vector3();
  readonly #point = new Vector3();
  readonly #lastSide = { x: 0, y: 0, set: false };

  constructor(capacity: number) {
    this.capacity = capacity;
    const vertices = capacity * SEGMENT_VERTICES;
    const attribute = (name: string, size: number) => {
      const made = new BufferAttribute(new Float32Array(vertices * size), size).setUsage(DynamicDrawUsage);
      this.geometry.setAttribute(name, made);
      return made;
    };
    this.#position = attribute('position', 3);
    this.#across = attribute('across', 3);
    this.#share = attribute('share', 1);
    this.#normal = attribute('normal', 3);
    this.#uv = attribute('uv', 2);
    const index = new Uint32Array(capacity * SEGMENT_INDICES);
    let k = 0;
    for (let s = 0; s < capacity; s++) {
      for (let j = 0; j < SECTION - 1; j++) {
        const a = s * SEGMENT_VERTICES + j;
        const b = a + SECTION;
        index.set([a, a + 1, b, a + 1, b + 1, b], k);
        k += 6;
      }
    }
    this.geometry.setIndex(new BufferAttribute(index, 1));
    this.geometry.setDrawRange(0, 0);
  }

  /** Segments now held, never above the capacity. */
  get segments(): number {
    return Math.min(this.#segments, this.capacity);
  }

  clear(): void {
    this.#segments = 0;
    this.#travel = 0;
    this.#last = null;
    this.#lastSide.set = false;
    this.geometry.setDrawRange(0, 0);
  }

  /** Breaks the trace: the next point starts a new one (the ski left the snow). */
  lift(): void {
    this.#last = null;
    this.#lastSide.set = false;
  }

  /** Adds a point; the first only starts the trace. Points closer than 1 mm are passed over. */
  add(point: GroovePoint, frame: SlopeFrame): void {
    const last = this.#last;
    if (!last) {
      this.#last = { ...point };
      return;
    }
    const dx = point.x - last.x;
    const dy = point.y - last.y;
    const run = Math.hypot(dx, dy);
    if (run < 1e-3) return;
    const slot = this.#segments % this.capacity;
    const sideX = dy / run;
    const sideY = -dx / run;
    const from = this.#lastSide;
    const startX = from.set ? from.x : sideX;
    const startY = from.set ? from.y : sideY;
    this.#rung(slot * SEGMENT_VERTICES, last, startX, startY, this.#travel, point.kind, frame);
    this.#travel += run;
    this.#rung(slot * SEGMENT_VERTICES + SECTION, point, sideX, sideY, this.#travel, point.kind, frame);
    from.x = sideX;
    from.y = sideY;
    from.set = true;
    this.#last = { ...point };
    this.#segments++;
    const first = slot * SEGMENT_VERTICES;
    for (const attribute of [this.#position, this.#across, this.#share, this.#normal, this.#uv]) {
      attribute.addUpdateRange(first * attribute.itemSize, SEGMENT_VERTICES * attribute.itemSize);
      attribute.needsUpdate = true;
    }
    this.geometry.setDrawRange(0, this.segments * SEGMENT_INDICES);
  }

  dispose(): void {
    this.geometry.dispose();
  }

  #rung(
    first: number,
    p: GroovePoint,
    sideX: number,
    sideY: number,
    travel: number,
    kind: GrooveKind,
    frame: SlopeFrame,
  ): void {
    const half = Math.max(p.width, 0.01) / 2;
    frame.direct(sideX, sideY, 0, p.y, this.#side);
    frame.direct(0, 0, 1, p.y, this.#up);
    // The trench is shaded by the way its walls face; a skid is a shallow scrape.
    const steep = Math.min(1.1, (kind === 'carve' ? 2.2 : 0.5) * (p.depth / half) + 0.35);
    for (let j = 0; j < SECTION; j++) {
      const v = first + j;
      const lip = SECTION_LIFT[j] * Math.min(p.depth * 0.25, 0.008);
      frame.place(p.x, p.y, CLEARANCE + lip, this.#point);
      this.#position.setXYZ(v, this.#point.x, this.#point.y, this.#point.z);
      this.#across.setXYZ(v, this.#side.x * half, this.#side.y * half, this.#side.z * half);
      this.#share.setX(v, SECTION_SHARE[j]);
      const tilt = SECTION_TILT[j] * steep;
      this.#tangent.copy(this.#up).multiplyScalar(Math.cos(tilt)).addScaledVector(this.#side, Math.sin(tilt));
      this.#normal.setXYZ(v, this.#tangent.x, this.#tangent.y, this.#tangent.z);
      const u = (SECTION_SHARE[j] + 1) / 2;
      this.#uv.setXY(v, kind === 'carve' ? 0.02 + 0.46 * u : 0.52 + 0.46 * u, travel * 2.5);
    }
  }
}

const HATCH = 64;

/** Left half: a smooth trench, darker at its floor. Right half: bold diagonal strokes for the skid. */
export function grooveTexels(): Uint8Array {
  const data = new Uint8Array(HATCH * HATCH * 4);
  for (let row = 0; row < HATCH; row++) {
    for (let column = 0; column < HATCH; column++) {
      const carve = column < HATCH / 2;
      const u = ((column % (HATCH / 2)) + 0.5) / (HATCH / 2);
      const edge = Math.min(1, 6 * Math.min(u, 1 - u));
      let shade: number;
      let cover: number;
      if (carve) {
        shade = 1 - 0.42 * Math.exp(-(((u - 0.5) / 0.2) ** 2));
        cover = edge;
      } else {
        const stroke = (u + row / HATCH) % 0.5 < 0.2;
        shade = stroke ? 0.55 : 0.96;
        cover = edge;
      }
      const k = 4 * (row * HATCH + column);
      data[k] = 255 * shade;
      data[k + 1] = 255 * Math.min(1, shade + 0.03);
      data[k + 2] = 255 * Math.min(1, shade + 0.07);
      data[k + 3] = 255 * cover;
    }
  }
  return data;
}

function grooveTexture(): DataTexture {
  const texture = new DataTexture(grooveTexels() as Uint8Array<ArrayBuffer>, HATCH, HATCH);
  texture.wrapT = RepeatWrapping;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.generateMipmaps = true;
  texture.anisotropy = 4;
  texture.colorSpace = SRGBColorSpace;
  texture.needsUpdate = true;
  return texture;
}

/** The drawn groove: its ribbon, its material, and the mesh that shows it. */
export class Groove {
  readonly ribbon: GrooveRibbon;
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;

  constructor(view: RibbonView, capacity = 1600) {
    this.ribbon = new GrooveRibbon(capacity);
    const material = new MeshLambertMaterial({
      map: grooveTexture(),
      transparent: true,
      depthWrite: false,
      polygonOffset: true,
      polygonOffsetFactor: -1,
      polygonOffsetUnits: -1,
    });
    widenRibbon(material, view, 4);
    this.mesh = new Mesh(this.ribbon.geometry, material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 1;
    this.mesh.receiveShadow = true;
  }

  setColour(colour: string): void {
    this.mesh.material.color.set(colour);
  }

  dispose(): void {
    this.ribbon.dispose();
    this.mesh.material.map?.dispose();
    this.mesh.material.dispose();
  }
}
