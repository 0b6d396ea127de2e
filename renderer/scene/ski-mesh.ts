import { BufferAttribute, BufferGeometry, Color, DynamicDrawUsage } from 'three';
import { bootBlock } from './boot-block.ts';
import { type SkiForm, type SkiOutline, STATIONS, sampleAt, skiOutline } from './ski-outline.ts';

/** Bend and twist of a ski, one value a station. */
export interface SkiBend {
  /** From the rear contact point, m, ascending. */
  readonly x: ArrayLike<number>;
  /** w(x), m, positive towards the skier. */
  readonly height: ArrayLike<number>;
  /** φ(x), rad, lowering the edge angle; absent means none. */
  readonly twist?: ArrayLike<number> | null;
  /** Penetration, m; the value at the boot centre sets how deep the ski is drawn. */
  readonly penetration?: ArrayLike<number> | null;
}

const STEEL = 0.0021;
/** Facets round the section, each with its own vertices so that the corners stay crisp. */
export const FACETS = 10;
/** Corner pairs of the facets, counter-clockwise seen from behind. */
const FACET_ENDS = [0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 0];
const CORNERS = 10;
export const SKI_VERTICES = STATIONS * FACETS * 2;
const FACET_PARTS = [
  'steel',
  'base',
  'steel',
  'steel',
  'wall',
  'rim',
  'top',
  'rim',
  'wall',
  'steel',
] as const;

/**
 * A ski with its boot block as one geometry. Axes: x to the skier's right, y forward, z towards the skier; the origin is the base
 * under the boot centre. Its buffers keep their size, and a new bend is written in place.
 */
export class SkiMesh {
  readonly geometry = new BufferGeometry();
  readonly outline: SkiOutline;
  readonly form: SkiForm;
  readonly #positions: Float32Array;
  readonly #normals: Float32Array;
  readonly #height = new Float64Array(STATIONS);
  readonly #slope = new Float64Array(STATIONS);
  readonly #twist = new Float64Array(STATIONS);
  readonly #corner = new Float64Array(STATIONS * CORNERS * 3);

  constructor(form: SkiForm, colour: string) {
    this.form = form;
    this.outline = skiOutline(form);
    // The boot never bends: it stands behind the ski's vertices in the same buffers, so both draw in one call.
    const boot = bootBlock(form.soleLength ?? 0.3);
    const place = boot.attributes.position.array;
    this.#positions = new Float32Array(SKI_VERTICES * 3 + place.length);
    this.#normals = new Float32Array(this.#positions.length);
    this.#positions.set(place, SKI_VERTICES * 3);
    this.#normals.set(boot.attributes.normal.array, SKI_VERTICES * 3);
    for (let i = SKI_VERTICES * 3 + 2; i < this.#positions.length; i += 3)
      this.#positions[i] += this.bootHeight;
    const colours = new Float32Array(this.#positions.length);
    colours.set(facetColours(colour));
    colours.set(boot.attributes.color.array, SKI_VERTICES * 3);
    boot.dispose();
    const position = new BufferAttribute(this.#positions, 3).setUsage(DynamicDrawUsage);
    const normal = new BufferAttribute(this.#normals, 3).setUsage(DynamicDrawUsage);
    this.geometry.setAttribute('position', position);
    this.geometry.setAttribute('normal', normal);
    this.geometry.setAttribute('color', new BufferAttribute(colours, 3));
    this.geometry.setIndex(new BufferAttribute(indices(place.length / 3), 1));
    this.setBend(null, 1, 1);
  }

  /**
   * Writes a bend into the buffers.
   * @param side 1 when the skier's right edge is in the snow, −1 for the left
   * @param exaggeration multiplies bend and twist; 1 is true
   */
  setBend(bend: SkiBend | null, side: 1 | -1, exaggeration: number): void {
    this.#sampleBend(bend, side, exaggeration);
    const { along, halfWidth, thickness } = this.outline;
    const corner = this.#corner;
    for (let i = 0; i < STATIONS; i++) {
      const y = halfWidth[i];
      const t = thickness[i];
      // Near the pointed ends the steel and the chamfers shrink with the width.
      const steel = Math.min(STEEL, 0.3 * y);
      const chamfer = Math.min(0.005, 0.4 * y);
      const lean = Math.min(0.002, 0.2 * y);
      this.#write(i, 0, -y, 0);
      this.#write(i, 1, -y + steel, 0);
      this.#write(i, 2, y - steel, 0);
      this.#write(i, 3, y, 0);
      this.#write(i, 4, y, STEEL);
      this.#write(i, 5, y - lean, t * 0.72);
      this.#write(i, 6, y - chamfer, t);
      this.#write(i, 7, -y + chamfer, t);
      this.#write(i, 8, -y + lean, t * 0.72);
      this.#write(i, 9, -y, STEEL);
    }
    let v = 0;
    for (let i = 0; i < STATIONS; i++) {
      const before = Math.max(0, i - 1) * CORNERS;
      const after = Math.min(STATIONS - 1, i + 1) * CORNERS;
      for (let f = 0; f < FACETS; f++) {
        const a = FACET_ENDS[2 * f];
        const b = FACET_ENDS[2 * f + 1];
        const pa = 3 * (i * CORNERS + a);
        const pb = 3 * (i * CORNERS + b);
        const dx = corner[pb] - corner[pa];
        const dy = corner[pb + 1] - corner[pa + 1];
        const dz = corner[pb + 2] - corner[pa + 2];
        for (const end of [a, b]) {
          const p = 3 * (i * CORNERS + end);
          const q0 = 3 * (before + end);
          const q1 = 3 * (after + end);
          const fx = corner[q1] - corner[q0];
          const fy = corner[q1 + 1] - corner[q0 + 1];
          const fz = corner[q1 + 2] - corner[q0 + 2];
          const nx = fy * dz - fz * dy;
          const ny = fz * dx - fx * dz;
          const nz = fx * dy - fy * dx;
          const norm = Math.hypot(nx, ny, nz) || 1;
          this.#positions[v] = corner[p];
          this.#normals[v++] = nx / norm;
          this.#positions[v] = corner[p + 1];
          this.#normals[v++] = ny / norm;
          this.#positions[v] = corner[p + 2];
          this.#normals[v++] = nz / norm;
        }
      }
    }
    this.geometry.attributes.position.needsUpdate = true;
    this.geometry.attributes.normal.needsUpdate = true;
    const reach = along[STATIONS - 1] - along[0];
    if (!this.geometry.boundingSphere) this.geometry.computeBoundingSphere();
    this.geometry.boundingSphere!.radius = reach * 1.2;
  }

  /** Top of the ski over its base under the boot, m. */
  get bootHeight(): number {
    return sampleAt(this.outline.along, this.outline.thickness, this.form.bootCentre);
  }

  /** Half width under the boot centre, m. */
  get bootHalfWidth(): number {
    return sampleAt(this.outline.along, this.outline.halfWidth, this.form.bootCentre);
  }

  /** Local frame on the topsheet at a station: [position, forward slope, twist], for things glued on it. */
  topAt(along: number, out: { y: number; z: number; slope: number; twist: number }): void {
    const x = this.outline.along;
    out.y = along - this.form.bootCentre;
    out.slope = sampleAt(x, this.#slope, along);
    out.twist = sampleAt(x, this.#twist, along);
    out.z = sampleAt(x, this.#height, along) + sampleAt(x, this.outline.thickness, along);
  }

  dispose(): void {
    this.geometry.dispose();
  }

  #sampleBend(bend: SkiBend | null, side: 1 | -1, exaggeration: number): void {
    const { along, rise } = this.outline;
    const { contactLength, bootCentre } = this.form;
    const step = contactLength / 200;
    const height = (x: number) => (bend ? sampleAt(bend.x, bend.height, x) : 0);
    const atBoot = height(bootCentre);
    const slopeTail = (height(step) - height(0)) / step;
    const slopeTip = (height(contactLength) - height(contactLength - step)) / step;
    for (let i = 0; i < STATIONS; i++) {
      const x = along[i];
      let w = height(x) - atBoot;
      if (x < 0) w += slopeTail * x;
      else if (x > contactLength) w += slopeTip * (x - contactLength);
      this.#height[i] = w * exaggeration + rise[i];
      this.#twist[i] = bend?.twist ? side * exaggeration * sampleAt(bend.x, bend.twist, x) : 0;
    }
    for (let i = 0; i < STATIONS; i++) {
      const a = Math.max(0, i - 1);
      const b = Math.min(STATIONS - 1, i + 1);
      this.#slope[i] = (this.#height[b] - this.#height[a]) / (along[b] - along[a]);
    }
  }

  /** Section point (q to the right, n off the base) of station i, turned by its twist and slope. */
  #write(i: number, corner: number, q: number, n: number): void {
    const sin = Math.sin(this.#twist[i]);
    const cos = Math.cos(this.#twist[i]);
    const up = q * sin + n * cos;
    const norm = Math.hypot(1, this.#slope[i]);
    const p = 3 * (i * CORNERS + corner);
    this.#corner[p] = q * cos - n * sin;
    this.#corner[p + 1] = this.outline.along[i] - this.form.bootCentre - (up * this.#slope[i]) / norm;
    this.#corner[p + 2] = this.#height[i] + up / norm;
  }
}

function facetColours(colour: string): Float32Array {
  const top = new Color(colour);
  const shades = {
    steel: new Color('#c9d0d6'),
    base: new Color('#23282d'),
    wall: new Color('#15181b'),
    rim: top.clone().lerp(new Color('#ffffff'), 0.45),
    top,
  };
  const out = new Float32Array(STATIONS * FACETS * 2 * 3);
  for (let i = 0; i < STATIONS; i++) {
    for (let f = 0; f < FACETS; f++) {
      const shade = shades[FACET_PARTS[f]];
      for (let e = 0; e < 2; e++) shade.toArray(out, 3 * ((i * FACETS + f) * 2 + e));
    }
  }
  return out;
}

function indices(bootVertices: number): Uint16Array {
  const index = new Uint16Array((STATIONS - 1) * FACETS * 6 + bootVertices);
  let k = 0;
  for (let i = 0; i < STATIONS - 1; i++) {
    for (let f = 0; f < FACETS; f++) {
      const a0 = (i * FACETS + f) * 2;
      const a1 = a0 + FACETS * 2;
      index.set([a0, a1, a0 + 1, a0 + 1, a1, a1 + 1], k);
      k += 6;
    }
  }
  for (let i = 0; i < bootVertices; i++) index[k++] = SKI_VERTICES + i;
  return index;
}
