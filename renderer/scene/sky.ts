import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  SphereGeometry,
} from 'three';
import type { SceneTheme } from './theme.ts';

const RADIUS = 900;
const RIDGE_STEPS = 180;

/** Lowest crest of each ridge: seen from a hillside, the near ones lie below the level of the eye. */
const CREST = [-0.01, -0.13, -0.25];

/** Height of a ridge line over the horizon at a bearing, as a share of its distance. */
function ridgeLine(bearing: number, layer: number): number {
  const b = bearing + layer * 1.7;
  const folded = (f: number, phase: number) => 1 - Math.abs(Math.sin(f * b + phase));
  return (
    CREST[layer] +
    (0.085 - 0.02 * layer) * folded(1.5, 0.3) ** 1.4 +
    0.04 * folded(4, 1.1) +
    0.016 * folded(10.5, 2.3)
  );
}

/** Gradient dome and three distant ridges in one call; it travels with the camera, so it is never reached. */
export class Sky {
  readonly mesh: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly #domeCount: number;

  constructor() {
    const dome = new SphereGeometry(RADIUS, 16, 24);
    this.#domeCount = dome.attributes.position.count;
    const ridges = ridgeGeometry();
    const geometry = new BufferGeometry();
    const position = new Float32Array([...dome.attributes.position.array, ...ridges.position]);
    geometry.setAttribute('position', new BufferAttribute(position, 3));
    geometry.setAttribute('color', new BufferAttribute(new Float32Array(position.length), 3));
    // Nothing here is tested for depth: the ridges come after the dome, the near one last.
    geometry.setIndex([...dome.index!.array, ...ridges.index.map(i => i + this.#domeCount)]);
    dome.dispose();
    const material = new MeshBasicMaterial({
      vertexColors: true,
      side: DoubleSide,
      fog: false,
      depthWrite: false,
      depthTest: false,
    });
    this.mesh = new Mesh(geometry, material);
    this.mesh.renderOrder = -10;
    this.mesh.frustumCulled = false;
  }

  applyTheme(theme: SceneTheme): void {
    const horizon = new Color(theme.skyHorizon);
    const zenith = new Color(theme.skyTop);
    const far = new Color(theme.ridgeFar);
    const near = new Color(theme.ridgeNear);
    const shade = new Color();
    const position = this.mesh.geometry.attributes.position;
    const colour = this.mesh.geometry.attributes.color;
    const ridgeCount = (position.count - this.#domeCount) / CREST.length;
    for (let i = 0; i < position.count; i++) {
      const ridge = i - this.#domeCount;
      if (ridge < 0) {
        const up = Math.max(0, position.getY(i) / RADIUS);
        shade.copy(horizon).lerp(zenith, Math.min(1, 1.25 * up ** 0.6));
      } else {
        // Crests keep the ridge's colour; feet fade into the haze.
        shade.copy(far).lerp(near, Math.floor(ridge / ridgeCount) / (CREST.length - 1));
        if (ridge % 2 === 0) shade.lerp(horizon, 0.8);
      }
      colour.setXYZ(i, shade.r, shade.g, shade.b);
    }
    colour.needsUpdate = true;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}

function ridgeGeometry(): { position: number[]; index: number[] } {
  const position: number[] = [];
  const index: number[] = [];
  for (let layer = 0; layer < CREST.length; layer++) {
    const distance = RADIUS * (0.85 - 0.08 * layer);
    for (let i = 0; i <= RIDGE_STEPS; i++) {
      const bearing = (i / RIDGE_STEPS) * 2 * Math.PI;
      const x = distance * Math.sin(bearing);
      const z = distance * Math.cos(bearing);
      const v = position.length / 3;
      position.push(x, (CREST[layer] - 0.14) * distance, z, x, distance * ridgeLine(bearing, layer), z);
      if (i < RIDGE_STEPS) index.push(v, v + 1, v + 2, v + 2, v + 1, v + 3);
    }
  }
  return { position, index };
}
