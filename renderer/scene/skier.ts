import {
  type BufferGeometry,
  CylinderGeometry,
  Group,
  Mesh,
  MeshLambertMaterial,
  SphereGeometry,
  TorusGeometry,
  Vector3,
} from 'three';

/** Body measures of the plain figure, m. */
const LEG = 0.82;
const MASS_HEIGHT = 1.02;
const TORSO = 0.62;
const UP = new Vector3(0, 1, 0);

/** Where the plain figure's joints lie; written in place. */
export interface FigureJoints {
  readonly foot: Vector3;
  readonly hips: Vector3;
  /** Centre of mass, on the line that leans by ψ. */
  readonly mass: Vector3;
  readonly head: Vector3;
}

/**
 * Joints of the figure: the leg stands on the ski, tipped by the edge angle; the centre of mass lies on the line
 * leaning by ψ; the trunk runs from the hips through the centre of mass. The bend between leg and trunk is the
 * angulation θ − ψ.
 * @param skiUp unit normal of the ski's base
 * @param leanUp unit direction from the ski to the centre of mass
 */
export function figureJoints(foot: Vector3, skiUp: Vector3, leanUp: Vector3, out: FigureJoints): void {
  out.foot.copy(foot);
  out.hips.copy(foot).addScaledVector(skiUp, LEG);
  out.mass.copy(foot).addScaledVector(leanUp, MASS_HEIGHT);
  out.head.copy(out.mass).sub(out.hips);
  if (out.head.lengthSq() < 1e-8) out.head.copy(leanUp);
  out.head.normalize().multiplyScalar(TORSO).add(out.hips).addScaledVector(leanUp, 0.14);
}

/** A plain lean figure: leg, trunk, head, hips, centre of mass and the line that leans. */
export class Skier {
  readonly group = new Group();
  readonly joints: FigureJoints = {
    foot: new Vector3(),
    hips: new Vector3(),
    mass: new Vector3(),
    head: new Vector3(),
  };
  readonly #body = new MeshLambertMaterial({ emissiveIntensity: 0.25 });
  readonly #accent = new MeshLambertMaterial({ emissiveIntensity: 0.4 });
  readonly #leg: Mesh;
  readonly #trunk: Mesh;
  readonly #lean: Mesh;
  readonly #hips: Mesh;
  readonly #mass: Mesh;
  readonly #head: Mesh;
  readonly #span = new Vector3();

  constructor() {
    const part = (geometry: BufferGeometry, material: MeshLambertMaterial) => {
      const mesh = new Mesh(geometry, material);
      mesh.castShadow = true;
      this.group.add(mesh);
      return mesh;
    };
    this.#leg = part(new CylinderGeometry(0.052, 0.04, 1, 12), this.#body);
    this.#trunk = part(new CylinderGeometry(0.1, 0.06, 1, 14), this.#body);
    this.#head = part(new SphereGeometry(0.115, 18, 12), this.#body);
    this.#hips = part(new TorusGeometry(0.1, 0.024, 10, 24), this.#accent);
    this.#mass = part(new SphereGeometry(0.062, 16, 12), this.#accent);
    this.#lean = part(new CylinderGeometry(0.011, 0.011, 1, 8), this.#accent);
    // The centre of mass lies inside the trunk; it is drawn through it.
    this.#mass.renderOrder = 4;
    this.#lean.renderOrder = 3;
    this.#accent.depthTest = false;
    this.#accent.transparent = true;
  }

  setColours(body: string, accent: string): void {
    this.#body.color.set(body);
    this.#body.emissive.set(body);
    this.#accent.color.set(accent);
    this.#accent.emissive.set(accent);
  }

  pose(foot: Vector3, skiUp: Vector3, leanUp: Vector3): void {
    const j = this.joints;
    figureJoints(foot, skiUp, leanUp, j);
    this.#stretch(this.#leg, j.foot, j.hips);
    this.#stretch(this.#trunk, j.hips, j.head);
    this.#stretch(this.#lean, j.foot, j.mass);
    this.#head.position.copy(j.head).addScaledVector(this.#span.copy(j.head).sub(j.hips).normalize(), 0.13);
    this.#mass.position.copy(j.mass);
    this.#hips.position.copy(j.hips);
    this.#hips.quaternion.setFromUnitVectors(Z, this.#span);
  }

  #stretch(mesh: Mesh, from: Vector3, to: Vector3): void {
    this.#span.copy(to).sub(from);
    const length = this.#span.length();
    mesh.position.copy(from).addScaledVector(this.#span, 0.5);
    mesh.scale.set(1, Math.max(length, 1e-3), 1);
    mesh.quaternion.setFromUnitVectors(UP, this.#span.normalize());
  }

  dispose(): void {
    for (const mesh of [this.#leg, this.#trunk, this.#head, this.#hips, this.#mass, this.#lean]) {
      mesh.geometry.dispose();
    }
    this.#body.dispose();
    this.#accent.dispose();
  }
}

const Z = new Vector3(0, 0, 1);
