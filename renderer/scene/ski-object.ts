import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  Group,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  SRGBColorSpace,
  Vector3,
} from 'three';
import { CLOSE_LAYER } from './label.ts';
import { type SkiBend, SkiMesh } from './ski-mesh.ts';
import { type SkiForm, sampleAt } from './ski-outline.ts';
import type { SlopeFrame } from './slope-frame.ts';

/** How a pair is told from the others: never by colour alone. */
export interface PairStyle {
  readonly letter: string;
  readonly colour: string;
  /** Lengths drawn and left out in turn, m on the snow; empty is a full line. */
  readonly dash: readonly number[];
}

/** Where a ski is on the snow. */
export interface SkiPlace {
  /** Slope coordinates of the edge under the boot, m. */
  x: number;
  y: number;
  /** Direction of the ski's axis from the fall line, rad, positive to the right. */
  axis: number;
  /** Edge angle, rad: positive tips the ski to its right. */
  edge: number;
  /** Penetration under the boot, m. */
  depth: number;
}

const LETTER = 0.052;

function smoothUnit(t: number): number {
  const c = Math.min(1, Math.max(0, t));
  return c * c * (3 - 2 * c);
}

/** World matrix of a ski (x to its right, y forward, z off the base, origin under the boot) on the snow. */
export class SkiSeat {
  readonly matrix = new Matrix4();
  readonly origin = new Vector3();
  readonly forward = new Vector3();
  readonly right = new Vector3();
  readonly up = new Vector3();

  /** @param halfWidth half width under the boot, m */
  set(place: Readonly<SkiPlace>, halfWidth: number, frame: SlopeFrame): void {
    const { axis, edge, y } = place;
    const sin = Math.sin(axis);
    const cos = Math.cos(axis);
    const tilt = Math.abs(edge);
    const side = edge < 0 ? -1 : 1;
    // The edge rides on the track; on the flat the midline does, and the change between is gradual.
    const aside = -side * halfWidth * Math.cos(tilt) * smoothUnit(tilt / 0.14);
    const height = halfWidth * Math.sin(tilt) - place.depth;
    frame.place(place.x + aside * cos, y - aside * sin, height, this.origin);
    frame.direct(sin, cos, 0, y, this.forward);
    const across = Math.sin(edge);
    frame.direct(across * cos, -across * sin, Math.cos(edge), y, this.up);
    this.right.copy(this.forward).cross(this.up);
    this.matrix.makeBasis(this.right, this.forward, this.up).setPosition(this.origin);
  }
}

/** A ski with its plate, boot and letter, ready to be placed. */
export class SkiObject {
  readonly group = new Group();
  readonly ski: SkiMesh;
  readonly seat = new SkiSeat();
  readonly #body: Mesh<BufferGeometry, MeshStandardMaterial>;
  readonly #letter: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly #glue = { y: 0, z: 0, slope: 0, twist: 0 };

  constructor(form: SkiForm, style: PairStyle, ghost = false) {
    this.ski = new SkiMesh(form, style.colour);
    const material = new MeshStandardMaterial({
      vertexColors: true,
      roughness: 0.5,
      transparent: ghost,
      opacity: ghost ? 0.55 : 1,
    });
    this.#body = new Mesh(this.ski.geometry, material);
    this.#body.castShadow = !ghost;
    this.#body.receiveShadow = !ghost;
    this.#body.frustumCulled = false;
    this.#letter = letterMesh(style.letter, ghost);
    this.#letter.matrixAutoUpdate = false;
    this.#letter.layers.set(CLOSE_LAYER);
    this.group.add(this.#body, this.#letter);
    this.group.matrixAutoUpdate = false;
  }

  setBend(bend: SkiBend | null, side: 1 | -1, exaggeration: number): void {
    this.ski.setBend(bend, side, exaggeration);
    const { bootCentre, contactLength } = this.ski.form;
    const glue = this.#glue;
    this.ski.topAt(bootCentre + 0.62 * (contactLength - bootCentre), glue);
    this.#letter.matrix.makeRotationX(Math.atan(glue.slope)).setPosition(0, glue.y, glue.z + 0.0012);
  }

  /** Where the ski is; filled in before `place`. */
  readonly at: SkiPlace = { x: 0, y: 0, axis: 0, edge: 0, depth: 0 };

  /** Puts the ski where `at` says. */
  place(frame: SlopeFrame): void {
    this.seat.set(this.at, this.ski.bootHalfWidth, frame);
    this.group.matrix.copy(this.seat.matrix);
    this.group.matrixWorldNeedsUpdate = true;
  }

  dispose(): void {
    this.ski.dispose();
    this.#body.material.dispose();
    this.#letter.geometry.dispose();
    this.#letter.material.map?.dispose();
    this.#letter.material.dispose();
  }
}

/** Penetration under the boot, 0 where the bend does not tell it. */
export function bootDepth(bend: SkiBend | null, form: SkiForm): number {
  return bend?.penetration ? Math.max(0, sampleAt(bend.x, bend.penetration, form.bootCentre)) : 0;
}

/**
 * Bend of a ski pressed wholly onto rigid snow, w = −(y_end − y) tan θ from the line between the ends: the
 * stand-in where no solved bend is given.
 */
export function rigidSnowBend(form: SkiForm, edgeAngle: number): SkiBend {
  const n = form.x.length;
  const height = new Float64Array(n);
  const tail = form.halfWidth[0];
  const tip = form.halfWidth[n - 1];
  const tangent = Math.tan(Math.abs(edgeAngle));
  for (let i = 0; i < n; i++) {
    const share = (form.x[i] - form.x[0]) / (form.x[n - 1] - form.x[0]);
    height[i] = -(tail + share * (tip - tail) - form.halfWidth[i]) * tangent;
  }
  return { x: form.x, height };
}

function letterMesh(letter: string, ghost: boolean): Mesh<BufferGeometry, MeshBasicMaterial> {
  const canvas = document.createElement('canvas');
  canvas.width = 128;
  canvas.height = 128;
  const context = canvas.getContext('2d')!;
  context.fillStyle = '#ffffff';
  context.font = '700 112px system-ui, "Noto Sans", sans-serif';
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(letter, 64, 70);
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  const h = LETTER / 2;
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    'position',
    new BufferAttribute(new Float32Array([-h, -h, 0, h, -h, 0, h, h, 0, -h, h, 0]), 3),
  );
  geometry.setAttribute('uv', new BufferAttribute(new Float32Array([0, 0, 1, 0, 1, 1, 0, 1]), 2));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const material = new MeshBasicMaterial({
    map: texture,
    transparent: true,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -2,
    opacity: ghost ? 0.6 : 0.95,
  });
  const mesh = new Mesh(geometry, material);
  mesh.renderOrder = 1;
  mesh.frustumCulled = false;
  return mesh;
}
