import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Mesh, MeshLambertMaterial, Vector3 } from 'three';
import { CLOSE_LAYER } from './label.ts';

const SIDES = 12;
const SHAFT = 0.018;
const HEAD = 0.052;
const HEAD_LENGTH = 0.14;
/** Rings from tail to point: [radius, counted from the point (1) or the tail (0), offset]. */
const RINGS: readonly (readonly [radius: number, fromPoint: number, offset: number])[] = [
  [0, 0, 0],
  [SHAFT, 0, 0],
  [SHAFT, 1, -HEAD_LENGTH],
  [HEAD, 1, -HEAD_LENGTH],
  [0, 1, 0],
];

/**
 * Positions of an arrow along +y from the origin; the head keeps its size, the shaft takes the rest. An arrow
 * shorter than its head shrinks as a whole.
 */
export function writeArrow(out: Float32Array, length: number, thickness = 1): void {
  const shrink = Math.min(1, length / (HEAD_LENGTH * thickness * 1.2)) * thickness;
  let k = 0;
  for (const [radius, fromPoint, offset] of RINGS) {
    const y = fromPoint * length + offset * shrink;
    for (let i = 0; i < SIDES; i++) {
      const a = (2 * Math.PI * i) / SIDES;
      out[k++] = radius * shrink * Math.cos(a);
      out[k++] = y;
      out[k++] = radius * shrink * Math.sin(a);
    }
  }
}

export const ARROW_VERTICES = RINGS.length * SIDES;

function arrowIndex(): number[] {
  const index: number[] = [];
  for (let ring = 0; ring < RINGS.length - 1; ring++) {
    for (let i = 0; i < SIDES; i++) {
      const a = ring * SIDES + i;
      const b = ring * SIDES + ((i + 1) % SIDES);
      index.push(a, a + SIDES, b, b, a + SIDES, b + SIDES);
    }
  }
  return index;
}

const UP = new Vector3(0, 1, 0);

/** One force drawn to scale from a point. */
export class ForceArrow {
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;
  /** World point where the label belongs. */
  readonly point = new Vector3();
  readonly #positions = new Float32Array(ARROW_VERTICES * 3);
  readonly #unit = new Vector3();
  #length = -1;

  constructor() {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(this.#positions, 3).setUsage(DynamicDrawUsage));
    geometry.setIndex(arrowIndex());
    writeArrow(this.#positions, 1);
    geometry.computeVertexNormals();
    this.mesh = new Mesh(
      geometry,
      new MeshLambertMaterial({ fog: false, emissiveIntensity: 0.45, depthTest: false, transparent: true }),
    );
    this.mesh.renderOrder = 5;
    this.mesh.layers.set(CLOSE_LAYER);
    this.mesh.frustumCulled = false;
    this.mesh.visible = false;
  }

  setColour(colour: string): void {
    this.mesh.material.color.set(colour);
    this.mesh.material.emissive.set(colour);
  }

  /** @param metres drawn length of the vector `direction` (any length); nothing is drawn below a centimetre */
  set(from: Vector3, direction: Vector3, metres: number, thickness = 1): void {
    this.mesh.visible = metres > 0.01;
    if (!this.mesh.visible) return;
    if (Math.abs(metres - this.#length) > 1e-3) {
      this.#length = metres;
      writeArrow(this.#positions, metres, thickness);
      this.mesh.geometry.attributes.position.needsUpdate = true;
    }
    this.#unit.copy(direction).normalize();
    this.mesh.position.copy(from);
    this.mesh.quaternion.setFromUnitVectors(UP, this.#unit);
    this.point.copy(from).addScaledVector(this.#unit, metres + 0.12);
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
