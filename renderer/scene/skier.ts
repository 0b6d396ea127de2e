import {
  Color,
  CylinderGeometry,
  Group,
  InstancedMesh,
  Matrix4,
  MeshLambertMaterial,
  Quaternion,
  SphereGeometry,
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

export function figureJointsAt(): FigureJoints {
  return { foot: new Vector3(), hips: new Vector3(), mass: new Vector3(), head: new Vector3() };
}

/**
 * Joints of the figure: the leg stands on the ski, tipped by the edge angle; the centre of mass lies on the line
 * leaning by ψ; the trunk runs from the hips through the centre of mass. The bend between leg and trunk is the
 * angulation θ − ψ.
 * @param skiUp unit normal of the ski's base
 * @param leanUp unit direction from the ski to the centre of mass
 * @param massHeight from the ski to the centre of mass, m; that of the plain figure unless given
 */
export function figureJoints(
  foot: Vector3,
  skiUp: Vector3,
  leanUp: Vector3,
  out: FigureJoints,
  massHeight = MASS_HEIGHT,
): void {
  out.foot.copy(foot);
  out.hips.copy(foot).addScaledVector(skiUp, (LEG / MASS_HEIGHT) * massHeight);
  out.mass.copy(foot).addScaledVector(leanUp, massHeight);
  out.head.copy(out.mass).sub(out.hips).normalize().multiplyScalar(TORSO).add(out.hips);
}

/** Rods: leg, trunk, bar across the hips, and the line that leans. */
const RODS = 4;
const ROD_RADIUS = [0.042, 0.062, 0.03, 0.009];
/** Balls: head, centre of mass, and the two ends of the hips. */
const BALLS = 4;
/** The ball of the centre of mass is wider than the trunk it lies in, so that it is seen. */
const BALL_RADIUS = [0.105, 0.085, 0.046, 0.046];
const HIP_HALF = 0.17;

/** A plain lean figure drawn in two calls: leg, trunk, head, hips, centre of mass and the line that leans. */
export class Skier {
  readonly group = new Group();
  readonly joints: FigureJoints = figureJointsAt();
  /** What labels should not cover. */
  readonly points: readonly Vector3[] = Object.values(this.joints);
  readonly #rods: InstancedMesh<CylinderGeometry, MeshLambertMaterial>;
  readonly #balls: InstancedMesh<SphereGeometry, MeshLambertMaterial>;
  readonly #span = new Vector3();
  readonly #middle = new Vector3();
  readonly #size = new Vector3();
  readonly #turn = new Quaternion();
  readonly #matrix = new Matrix4();
  readonly #left = new Vector3();
  readonly #right = new Vector3();

  constructor() {
    this.#rods = new InstancedMesh(new CylinderGeometry(1, 1, 1, 14), new MeshLambertMaterial(), RODS);
    this.#balls = new InstancedMesh(new SphereGeometry(1, 14, 10), new MeshLambertMaterial(), BALLS);
    for (const mesh of [this.#rods, this.#balls]) {
      mesh.castShadow = true;
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
    this.setColours('#2b3f52', '#b4540a');
  }

  setColours(body: string, accent: string): void {
    const plain = new Color(body);
    const marked = new Color(accent);
    for (let i = 0; i < RODS; i++) this.#rods.setColorAt(i, i < 2 ? plain : marked);
    for (let i = 0; i < BALLS; i++) this.#balls.setColorAt(i, i === 0 ? plain : marked);
    // A little light of its own keeps the figure readable against night snow.
    for (const mesh of [this.#rods, this.#balls]) mesh.material.emissive.set(body).multiplyScalar(0.14);
    this.#rods.instanceColor!.needsUpdate = true;
    this.#balls.instanceColor!.needsUpdate = true;
  }

  /**
   * @param forward unit direction of the ski, square to which the hips are drawn
   * @param leg from the ski to the centre of mass, m; that of the plain figure where it is not known
   */
  pose(foot: Vector3, skiUp: Vector3, leanUp: Vector3, forward: Vector3, leg = Number.NaN): void {
    const j = this.joints;
    figureJoints(foot, skiUp, leanUp, j, Number.isFinite(leg) ? leg : MASS_HEIGHT);
    // Hips stay square to the trunk.
    this.#span.copy(j.head).sub(j.hips).normalize();
    this.#right.copy(forward).cross(this.#span).normalize().multiplyScalar(HIP_HALF);
    this.#left.copy(j.hips).sub(this.#right);
    this.#right.add(j.hips);
    this.#rod(0, j.foot, j.hips);
    this.#rod(1, j.hips, j.head);
    this.#rod(2, this.#left, this.#right);
    this.#rod(3, j.foot, j.mass);
    this.#middle.copy(j.head).sub(j.hips).normalize().multiplyScalar(0.1).add(j.head);
    this.#ball(0, this.#middle);
    this.#ball(1, j.mass);
    this.#ball(2, this.#left);
    this.#ball(3, this.#right);
    this.#rods.instanceMatrix.needsUpdate = true;
    this.#balls.instanceMatrix.needsUpdate = true;
  }

  #rod(i: number, from: Vector3, to: Vector3): void {
    this.#span.copy(to).sub(from);
    const length = Math.max(this.#span.length(), 1e-4);
    this.#middle.copy(from).addScaledVector(this.#span, 0.5);
    this.#turn.setFromUnitVectors(UP, this.#span.divideScalar(length));
    this.#size.set(ROD_RADIUS[i], length, ROD_RADIUS[i]);
    this.#rods.setMatrixAt(i, this.#matrix.compose(this.#middle, this.#turn, this.#size));
  }

  #ball(i: number, at: Vector3): void {
    this.#size.setScalar(BALL_RADIUS[i]);
    this.#balls.setMatrixAt(i, this.#matrix.compose(at, this.#turn.identity(), this.#size));
  }

  dispose(): void {
    for (const mesh of [this.#rods, this.#balls]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
      mesh.dispose();
    }
  }
}
