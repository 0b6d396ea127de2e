import {
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  Group,
  LinearFilter,
  LinearMipmapLinearFilter,
  Mesh,
  MeshLambertMaterial,
  NoColorSpace,
  RepeatWrapping,
  Vector3,
} from 'three';
import type { SlopeFrame } from './slope-frame.ts';
import { corduroyHeights, groomedTilt, offPisteHeight, reliefTexels, TILE } from './snow-relief.ts';
import type { SceneTheme } from './theme.ts';

/** The groomed strip and how far the hill goes on around it, slope metres. */
export interface SnowExtent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Unprepared snow beyond the strip on every side. */
  readonly beyond: number;
}

const TEXELS = 512;
/** A groomer's pass is this wide; where two meet stays a low seam. */
const PASS = 4.8;

/**
 * Grid over [x0, x1] × [y0, y1] with a height over the slope plane at every corner; u and v run in relief tiles.
 * The x and y lists may be uneven, so that far snow costs little. Cells whose middle `left` accepts are left out.
 */
export function snowGrid(
  xs: readonly number[],
  ys: readonly number[],
  height: (x: number, y: number) => number,
  frame: SlopeFrame,
  left?: (x: number, y: number) => boolean,
): BufferGeometry {
  const columns = xs.length;
  const count = columns * ys.length;
  const position = new Float32Array(count * 3);
  const uv = new Float32Array(count * 2);
  const index: number[] = [];
  const p = new Vector3();
  for (let j = 0; j < ys.length; j++) {
    for (let i = 0; i < columns; i++) {
      const v = j * columns + i;
      frame.place(xs[i], ys[j], height(xs[i], ys[j]), p).toArray(position, 3 * v);
      uv[2 * v] = xs[i] / TILE;
      uv[2 * v + 1] = ys[j] / TILE;
      if (i + 1 < columns && j + 1 < ys.length) {
        if (left?.((xs[i] + xs[i + 1]) / 2, (ys[j] + ys[j + 1]) / 2)) continue;
        index.push(v, v + 1, v + columns, v + 1, v + columns + 1, v + columns);
      }
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('uv', new BufferAttribute(uv, 2));
  geometry.setIndex(new BufferAttribute(new Uint32Array(index), 1));
  geometry.computeVertexNormals();
  return geometry;
}

/** Tilts the normals of the groomed grid by its slow waves. */
function tiltLight(geometry: BufferGeometry, xs: readonly number[], ys: readonly number[]): void {
  const normal = geometry.attributes.normal;
  const n = new Vector3();
  for (let j = 0; j < ys.length; j++) {
    for (let i = 0; i < xs.length; i++) {
      const v = j * xs.length + i;
      const { across, down } = groomedTilt(xs[i], ys[j]);
      n.fromBufferAttribute(normal, v);
      n.x += across;
      n.z += down;
      n.normalize();
      normal.setXYZ(v, n.x, n.y, n.z);
    }
  }
}

/** Numbers from a to b, at most `step` apart. */
export function spread(a: number, b: number, step: number): number[] {
  const n = Math.max(1, Math.ceil((b - a) / step));
  return Array.from({ length: n + 1 }, (_, i) => a + ((b - a) * i) / n);
}

/** Distances from `from` outwards to `to`, each step longer than the one before. */
function outward(from: number, to: number, first: number, longest: number): number[] {
  const out: number[] = [];
  let step = first;
  for (let at = step; at < Math.abs(to - from); at += step) {
    out.push(from + Math.sign(to - from) * at);
    step = Math.min(longest, step * 1.3);
  }
  out.push(to);
  return out;
}

/** Groomed strip with corduroy, and the unprepared snow around it. */
export class SnowSurface {
  readonly group = new Group();
  readonly #relief: DataTexture;
  readonly #piste: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly #beyond: Mesh<BufferGeometry, MeshLambertMaterial>;

  constructor() {
    const texels = reliefTexels(corduroyHeights(TEXELS), TEXELS, TILE) as Uint8Array<ArrayBuffer>;
    this.#relief = new DataTexture(texels, TEXELS, TEXELS);
    this.#relief.wrapS = RepeatWrapping;
    this.#relief.wrapT = RepeatWrapping;
    this.#relief.magFilter = LinearFilter;
    this.#relief.minFilter = LinearMipmapLinearFilter;
    this.#relief.generateMipmaps = true;
    this.#relief.anisotropy = 8;
    this.#relief.colorSpace = NoColorSpace;
    this.#relief.needsUpdate = true;
    const groomed = new MeshLambertMaterial({ normalMap: this.#relief });
    const loose = new MeshLambertMaterial();
    for (const material of [groomed, loose]) {
      material.polygonOffset = true;
      material.polygonOffsetFactor = 1;
      material.polygonOffsetUnits = 2;
    }
    this.#piste = new Mesh(new BufferGeometry(), groomed);
    this.#beyond = new Mesh(new BufferGeometry(), loose);
    this.#piste.receiveShadow = true;
    this.#piste.frustumCulled = false;
    this.#beyond.frustumCulled = false;
    this.group.add(this.#piste, this.#beyond);
  }

  /** Filters the groomed relief less, for machines that draw in software. */
  coarsen(): void {
    this.#relief.anisotropy = 1;
  }

  setExtent(extent: SnowExtent, frame: SlopeFrame): void {
    const { left, right, top, bottom, beyond } = extent;
    this.#piste.geometry.dispose();
    this.#beyond.geometry.dispose();
    const rows = spread(top, bottom, Math.max(2.5, (bottom - top) / 52));
    const columns: number[] = [];
    for (const x of spread(left, right, PASS)) {
      // A narrow seam either side of each pass, so that vertex normals shade it as a low ridge.
      columns.push(x - 0.16, x, x + 0.16);
    }
    columns[0] = left;
    columns[columns.length - 1] = right;
    columns.splice(1, 1);
    columns.splice(columns.length - 2, 1);
    const seam = (x: number) => {
      const share = (x - left) / ((right - left) / Math.max(1, Math.ceil((right - left) / PASS)));
      const near = Math.abs(share - Math.round(share));
      return x > left + 1 && x < right - 1 && near < 1e-6 ? -0.015 : 0;
    };
    this.#piste.geometry = snowGrid(columns, rows, seam, frame);
    tiltLight(this.#piste.geometry, columns, rows);
    const xs = [
      ...outward(left, left - beyond, 1.4, 7).reverse(),
      left,
      right,
      ...outward(right, right + beyond, 1.4, 7),
    ];
    const ys = [
      ...outward(top, top - beyond * 0.6, 3, 12).reverse(),
      ...rows,
      ...outward(bottom, bottom + beyond * 1.5, 3, 14),
    ];
    const bank = (x: number, y: number) => {
      const out = Math.max(left - x, x - right, top - y, y - bottom, 0);
      const across = Math.max(left - x, x - right, 0);
      return (1 - Math.exp(-((out / 5) ** 2))) * (offPisteHeight(x, y) + 0.25) + 0.03 * across;
    };
    const groomed = (x: number, y: number) => x > left && x < right && y > top && y < bottom;
    this.#beyond.geometry = snowGrid(xs, ys, bank, frame, groomed);
  }

  applyTheme(theme: SceneTheme): void {
    this.#piste.material.color.set(theme.snow);
    this.#beyond.material.color.set(theme.offPiste);
    this.#piste.material.normalScale.set(theme.relief, theme.relief);
  }

  /** The groomed strip, for finding the point under the pointer. */
  get piste(): Mesh {
    return this.#piste;
  }

  dispose(): void {
    this.#relief.dispose();
    for (const mesh of [this.#piste, this.#beyond]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
  }
}
