import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  SphereGeometry,
} from 'three';
import type { SceneTheme } from './theme.ts';

const RADIUS = 900;
const RIDGE_STEPS = 180;

/** Height of a ridge line over the horizon at a bearing, as a share of its distance. */
export function ridgeLine(bearing: number, layer: number): number {
  const b = bearing + layer * 1.7;
  const folded = (f: number, phase: number) => 1 - Math.abs(Math.sin(f * b + phase));
  return (
    (layer === 0 ? 0.055 : 0.02) +
    0.075 * folded(1.5, 0.3) ** 1.4 * (layer === 0 ? 1 : 0.7) +
    0.035 * folded(4, 1.1) +
    0.014 * folded(10.5, 2.3)
  );
}

/** Gradient dome and two distant ridges; it travels with the camera, so it is never reached or clipped. */
export class Sky {
  readonly group = new Group();
  readonly #dome: Mesh<SphereGeometry, MeshBasicMaterial>;
  readonly #ridges: Mesh<BufferGeometry, MeshBasicMaterial>;

  constructor() {
    const material = () =>
      new MeshBasicMaterial({
        vertexColors: true,
        side: DoubleSide,
        fog: false,
        depthWrite: false,
        depthTest: false,
      });
    const dome = new SphereGeometry(RADIUS, 24, 32);
    dome.setAttribute('color', new BufferAttribute(new Float32Array(dome.attributes.position.count * 3), 3));
    this.#dome = new Mesh(dome, material());
    this.#dome.renderOrder = -10;
    this.#ridges = new Mesh(ridgeGeometry(), material());
    this.#ridges.renderOrder = -9;
    for (const mesh of [this.#dome, this.#ridges]) mesh.frustumCulled = false;
    this.group.add(this.#dome, this.#ridges);
  }

  applyTheme(theme: SceneTheme): void {
    const horizon = new Color(theme.skyHorizon);
    const zenith = new Color(theme.skyTop);
    const shade = new Color();
    const position = this.#dome.geometry.attributes.position;
    const colour = this.#dome.geometry.attributes.color;
    for (let i = 0; i < position.count; i++) {
      const up = Math.max(0, position.getY(i) / RADIUS);
      shade.copy(horizon).lerp(zenith, Math.min(1, 1.25 * up ** 0.6));
      colour.setXYZ(i, shade.r, shade.g, shade.b);
    }
    colour.needsUpdate = true;
    const far = new Color(theme.ridgeFar);
    const near = new Color(theme.ridgeNear);
    const ridge = this.#ridges.geometry.attributes.color;
    for (let i = 0; i < ridge.count; i++) {
      // Crests keep the ridge's colour; feet fade into the haze.
      shade.copy(i < ridge.count / 2 ? far : near);
      if (i % 2 === 0) shade.lerp(horizon, 0.85);
      ridge.setXYZ(i, shade.r, shade.g, shade.b);
    }
    ridge.needsUpdate = true;
  }

  dispose(): void {
    for (const mesh of [this.#dome, this.#ridges]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
  }
}

function ridgeGeometry(): BufferGeometry {
  const layers = 2;
  const position = new Float32Array(layers * (RIDGE_STEPS + 1) * 2 * 3);
  const index: number[] = [];
  let k = 0;
  for (let layer = 0; layer < layers; layer++) {
    const distance = RADIUS * (layer === 0 ? 0.8 : 0.7);
    for (let i = 0; i <= RIDGE_STEPS; i++) {
      const bearing = (i / RIDGE_STEPS) * 2 * Math.PI;
      const x = distance * Math.sin(bearing);
      const z = distance * Math.cos(bearing);
      const v = k / 3;
      position.set([x, -0.1 * distance, z, x, distance * ridgeLine(bearing, layer), z], k);
      k += 6;
      if (i < RIDGE_STEPS) index.push(v, v + 1, v + 2, v + 2, v + 1, v + 3);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('color', new BufferAttribute(new Float32Array(position.length), 3));
  geometry.setIndex(index);
  return geometry;
}
