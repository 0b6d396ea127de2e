import { type PerspectiveCamera, Vector3 } from 'three';
import { DEGREE } from '../../core/units/index.ts';

/** Where a camera looks: from `direction` towards `target`, with `wide` × `high` metres in the picture. */
export interface CameraPose {
  readonly target: Vector3;
  /** From the target towards the camera; any length. */
  readonly direction: Vector3;
  wide: number;
  high: number;
  /** Vertical field of view, degrees. */
  fov: number;
}

export function cameraPose(): CameraPose {
  return { target: new Vector3(), direction: new Vector3(0, 1, 1), wide: 3, high: 2, fov: 34 };
}

/** Eased state of the camera: angles in radians, distance in m. */
export interface RigState {
  readonly target: Vector3;
  azimuth: number;
  elevation: number;
  distance: number;
  fov: number;
}

const HIGHEST = 89.4 * DEGREE;
const LOWEST = 2 * DEGREE;
const EASE_SECONDS = 0.7;

/** Distance at which both spans of the pose fit a picture of the given aspect (width over height). */
export function fitDistance(wide: number, high: number, fovDegrees: number, aspect: number): number {
  const half = Math.tan((fovDegrees * Math.PI) / 360);
  return Math.max(high / (2 * half), wide / (2 * half * aspect));
}

/** Writes a pose as angles and distance. */
export function poseToState(pose: CameraPose, aspect: number, out: RigState): RigState {
  const d = pose.direction;
  const length = d.length() || 1;
  out.target.copy(pose.target);
  out.azimuth = Math.atan2(d.x, d.z);
  out.elevation = Math.min(HIGHEST, Math.asin(d.y / length));
  out.distance = fitDistance(pose.wide, pose.high, pose.fov, aspect);
  out.fov = pose.fov;
  return out;
}

function newState(): RigState {
  return { target: new Vector3(), azimuth: 0, elevation: 0.5, distance: 5, fov: 34 };
}

function nearest(angle: number, to: number): number {
  return angle - 2 * Math.PI * Math.round((angle - to) / (2 * Math.PI));
}

/**
 * Camera rig: eases from one named pose to the next while both may move, and adds what the person has turned and
 * zoomed on top. Pointer: drag to orbit, wheel or pinch to zoom. Keys: arrows orbit, + and − zoom, Home resets.
 */
export class CameraRig {
  readonly camera: PerspectiveCamera;
  /** Set when the person moved the camera since it was last read. */
  touched = false;
  instant = false;
  #turn = 0;
  #tilt = 0;
  #zoom = 1;
  #ease = 1;
  #started = false;
  readonly #from = newState();
  readonly #goal = newState();
  readonly #now = newState();
  readonly #pointers = new Map<number, { x: number; y: number }>();
  #pinch = 0;

  constructor(camera: PerspectiveCamera) {
    this.camera = camera;
  }

  /** Starts easing from where the camera is now to the pose it is given next. */
  change(): void {
    if (!this.#started || this.instant) return;
    this.#copy(this.#now, this.#from);
    this.#ease = 0;
    this.#turn = 0;
    this.#tilt = 0;
    this.#zoom = 1;
  }

  /** Distance to what is looked at, m. */
  get distance(): number {
    return this.#now.distance;
  }

  get easing(): boolean {
    return this.#ease < 1;
  }

  orbit(turn: number, tilt: number): void {
    this.#turn += turn;
    this.#tilt += tilt;
    this.touched = true;
  }

  zoom(factor: number): void {
    this.#zoom = Math.min(6, Math.max(0.2, this.#zoom * factor));
    this.touched = true;
  }

  reset(): void {
    this.#turn = 0;
    this.#tilt = 0;
    this.#zoom = 1;
    this.touched = true;
  }

  /**
   * Moves the camera for this picture.
   * @param room aspect of the part the pose must fit; `aspect` is that of the whole picture
   */
  apply(pose: CameraPose, room: number, aspect: number, seconds: number): void {
    const goal = poseToState(pose, room, this.#goal);
    this.#ease = this.instant || !this.#started ? 1 : Math.min(1, this.#ease + seconds / EASE_SECONDS);
    this.#started = true;
    const e = this.#ease * this.#ease * (3 - 2 * this.#ease);
    const from = this.#from;
    const now = this.#now;
    goal.azimuth = nearest(goal.azimuth, from.azimuth);
    const mix = (a: number, b: number) => a + e * (b - a);
    now.target.copy(from.target).lerp(goal.target, e);
    now.azimuth = mix(from.azimuth, goal.azimuth) + this.#turn;
    now.elevation = Math.min(HIGHEST, Math.max(LOWEST, mix(from.elevation, goal.elevation) + this.#tilt));
    this.#tilt = Math.min(HIGHEST, Math.max(-HIGHEST, this.#tilt));
    // Distances ease by ratio: from 2 m to 60 m the zoom then feels even.
    now.distance =
      (e === 1 ? goal.distance : from.distance * (goal.distance / from.distance) ** e) * this.#zoom;
    now.fov = mix(from.fov, goal.fov);
    const flat = now.distance * Math.cos(now.elevation);
    const camera = this.camera;
    camera.position.set(
      now.target.x + flat * Math.sin(now.azimuth),
      now.target.y + now.distance * Math.sin(now.elevation),
      now.target.z + flat * Math.cos(now.azimuth),
    );
    camera.lookAt(now.target);
    camera.fov = now.fov;
    camera.aspect = aspect;
    camera.near = Math.max(0.02, now.distance * 0.04);
    camera.far = 1600;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  /** Listens on an element; returns what stops it. `changed` is called after every input. */
  listen(element: HTMLElement, changed: () => void): () => void {
    const down = (event: PointerEvent) => {
      element.setPointerCapture(event.pointerId);
      this.#pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      this.#pinch = 0;
    };
    const move = (event: PointerEvent) => {
      const last = this.#pointers.get(event.pointerId);
      if (!last) return;
      if (this.#pointers.size === 1) {
        this.orbit((last.x - event.clientX) * 0.006, (event.clientY - last.y) * 0.005);
      }
      last.x = event.clientX;
      last.y = event.clientY;
      if (this.#pointers.size === 2) {
        const [a, b] = [...this.#pointers.values()];
        const gap = Math.hypot(a.x - b.x, a.y - b.y);
        if (this.#pinch > 0 && gap > 0) this.zoom(this.#pinch / gap);
        this.#pinch = gap;
      }
      changed();
    };
    const up = (event: PointerEvent) => {
      this.#pointers.delete(event.pointerId);
      this.#pinch = 0;
    };
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      this.zoom(Math.exp(Math.max(-120, Math.min(120, event.deltaY)) * 0.0015));
      changed();
    };
    const key = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const step = 0.07;
      if (event.key === 'ArrowLeft') this.orbit(-step, 0);
      else if (event.key === 'ArrowRight') this.orbit(step, 0);
      else if (event.key === 'ArrowUp') this.orbit(0, step);
      else if (event.key === 'ArrowDown') this.orbit(0, -step);
      else if (event.key === '+' || event.key === '=') this.zoom(0.9);
      else if (event.key === '-' || event.key === '−') this.zoom(1 / 0.9);
      else if (event.key === 'Home') this.reset();
      else return;
      event.preventDefault();
      changed();
    };
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('keydown', key);
    return () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('keydown', key);
    };
  }

  #copy(from: RigState, to: RigState): void {
    to.target.copy(from.target);
    to.azimuth = from.azimuth;
    to.elevation = from.elevation;
    to.distance = from.distance;
    to.fov = from.fov;
  }
}
