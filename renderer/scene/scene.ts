import { type EdgeCamera, EdgeScene, type EdgeSceneInput } from './edge-scene.ts';
import { type HillCamera, HillScene, type HillSceneInput } from './hill-scene.ts';
import { ribbonView } from './ribbon-material.ts';
import type { SceneOptions, SceneStats } from './scene-options.ts';
import type { SetUp } from './set-up.ts';
import { Stage } from './stage.ts';
import type { ThemeName } from './theme.ts';
import { webglAvailable } from './webgl.ts';

/** A scene on the page. Everything shown follows from `update`; nothing is drawn while nothing changes. */
export interface SceneHandle<Input, CameraName extends string> {
  readonly canvas: HTMLCanvasElement;
  readonly cameras: readonly CameraName[];
  readonly camera: CameraName;
  update(input: Input): void;
  setCamera(name: CameraName): void;
  /** Small second picture; `camera` null leaves the choice to the scene. */
  setInset(shown: boolean, camera?: CameraName | null): void;
  setTheme(name: ThemeName): void;
  /** Accessible description of the picture. */
  describe(text: string): void;
  /** Only needed where the page changes size unseen by a ResizeObserver. */
  resize(): void;
  /** For buttons beside the picture: radians, factor on the distance, and back to the named camera. */
  orbit(turn: number, tilt: number): void;
  zoom(factor: number): void;
  resetView(): void;
  play(): void;
  pause(): void;
  /** Shows time t, s. */
  seek(seconds: number): void;
  /** Shows a moment, s; playing then begins at the start all the same. */
  cue(seconds: number): void;
  /** 1 is real time, 0.25 a quarter of it. */
  setRate(rate: number): void;
  readonly time: number;
  readonly duration: number;
  readonly playing: boolean;
  /** One listener, told of every change of the time shown. */
  onTime(listener: ((seconds: number, playing: boolean) => void) | null): void;
  /** Slope coordinates (m) under a point of the page, or null. */
  pick(clientX: number, clientY: number): { x: number; y: number } | null;
  /** Page position of a slope point, or null when it is behind the camera. */
  project(x: number, y: number, z?: number): { clientX: number; clientY: number } | null;
  snapshot(): Promise<Blob | null>;
  stats(): SceneStats;
  dispose(): void;
}

export type EdgeSceneHandle = SceneHandle<EdgeSceneInput, EdgeCamera>;
export type HillSceneHandle = SceneHandle<HillSceneInput, HillCamera>;

/**
 * Makes a scene in a container (a canvas is added) or on a canvas.
 * @throws Error when the page cannot make a WebGL 2 context; ask `webglAvailable` first
 */
export function createScene(target: HTMLElement, options: SceneOptions & { kind: 'edge' }): EdgeSceneHandle;
export function createScene(target: HTMLElement, options: SceneOptions & { kind: 'hill' }): HillSceneHandle;
export function createScene(
  target: HTMLElement,
  options: SceneOptions & { kind: 'edge' | 'hill' },
): EdgeSceneHandle | HillSceneHandle {
  if (!webglAvailable()) throw new RangeError('WebGL 2 is not available; the flat drawings need none');
  const view = ribbonView();
  if (options.kind === 'edge') {
    const setUp = new EdgeScene(view);
    return handle(setUp, new Stage(target, setUp, view, options));
  }
  const setUp = new HillScene(view);
  return handle(setUp, new Stage(target, setUp, view, options));
}

function handle<Input, CameraName extends string>(
  setUp: SetUp<Input, CameraName>,
  stage: Stage<Input, CameraName>,
): SceneHandle<Input, CameraName> {
  const { playback } = setUp;
  const then = (change: () => void) => {
    change();
    stage.invalidate();
  };
  return {
    canvas: stage.canvas,
    cameras: setUp.cameras,
    get camera() {
      return stage.camera;
    },
    update: input => stage.update(input),
    setCamera: name => stage.setCamera(name),
    setInset: (shown, camera = null) => stage.setInset(shown, camera),
    setTheme: name => stage.setTheme(name),
    describe: text => stage.describe(text),
    resize: () => stage.resize(),
    orbit: (turn, tilt) => then(() => stage.rig.orbit(turn, tilt)),
    zoom: factor => then(() => stage.rig.zoom(factor)),
    resetView: () => then(() => stage.rig.reset()),
    play: () => then(() => playback.play()),
    pause: () => then(() => playback.pause()),
    seek: seconds => then(() => playback.seek(seconds)),
    cue: seconds => then(() => playback.cue(seconds)),
    setRate: rate => {
      playback.rate = Math.max(0, rate);
    },
    get time() {
      return playback.time;
    },
    get duration() {
      return playback.duration;
    },
    get playing() {
      return playback.playing;
    },
    onTime: listener => {
      playback.onTime = listener;
    },
    pick: (clientX, clientY) => stage.pick(clientX, clientY),
    project: (x, y, z) => stage.project(x, y, z),
    snapshot: () => stage.snapshot(),
    stats: () => stage.stats(),
    dispose: () => stage.dispose(),
  };
}
