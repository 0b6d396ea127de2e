import {
  DirectionalLight,
  Fog,
  HemisphereLight,
  PCFShadowMap,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { CameraRig, cameraPose } from './camera-rig.ts';
import { CLOSE_LAYER, chooseLabels } from './label.ts';
import type { RibbonView } from './ribbon-material.ts';
import type { SceneOptions, SceneStats } from './scene-options.ts';
import type { SetUp } from './set-up.ts';
import { Sky } from './sky.ts';
import { THEMES, type ThemeName } from './theme.ts';

/** Direction towards the low winter sun: from the skier's right, a little ahead. */
const SUN = new Vector3(0.82, 0.4, -0.34).normalize();

/** Draws a set-up: renderer, light, sky, cameras, and the loop that runs only while something moves. */
export class Stage<Input, CameraName extends string> {
  readonly canvas: HTMLCanvasElement;
  readonly rig: CameraRig;
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #sun = new DirectionalLight();
  readonly #fill = new HemisphereLight();
  readonly #fog = new Fog('#ffffff', 60, 260);
  readonly #sky = new Sky();
  readonly #setUp: SetUp<Input, CameraName>;
  readonly #ribbons: RibbonView;
  readonly #main = new PerspectiveCamera();
  readonly #small = new PerspectiveCamera();
  readonly #smallRig = new CameraRig(this.#small);
  readonly #pose = cameraPose();
  /** What the small picture hides of the large one, px from the lower right corner. */
  readonly #cover = { width: 0, height: 0 };
  readonly #options: SceneOptions;
  readonly #stopListening: () => void;
  readonly #ownsCanvas: boolean;
  readonly #observer: ResizeObserver | null;
  #theme = THEMES.snow;
  #camera: CameraName;
  #inset: boolean;
  #insetCamera: CameraName | null = null;
  #request = 0;
  #last = 0;
  #frames = 0;
  #cpu = 0;
  #width = 1;
  #height = 1;
  #disposed = false;
  #filled = false;

  constructor(
    target: HTMLElement,
    setUp: SetUp<Input, CameraName>,
    ribbons: RibbonView,
    options: SceneOptions,
  ) {
    this.#setUp = setUp;
    this.#ribbons = ribbons;
    this.#options = options;
    this.#camera = setUp.cameras[0];
    this.#inset = options.inset ?? true;
    this.#ownsCanvas = !(target instanceof HTMLCanvasElement);
    this.canvas = target instanceof HTMLCanvasElement ? target : document.createElement('canvas');
    if (this.#ownsCanvas) {
      this.canvas.style.cssText = 'display:block;width:100%;height:100%;touch-action:none';
      target.append(this.canvas);
    }
    this.canvas.tabIndex = 0;
    this.canvas.setAttribute('role', 'img');
    this.describe(options.description ?? '');
    const full = options.look !== 'plain';
    this.#renderer = new WebGLRenderer({ canvas: this.canvas, antialias: full, stencil: false });
    this.#renderer.info.autoReset = false;
    this.#renderer.autoClear = false;
    this.#renderer.shadowMap.enabled = full;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#sun.castShadow = full;
    this.#sun.shadow.mapSize.set(2048, 2048);
    this.#sun.shadow.normalBias = 0.004;
    this.#sun.shadow.bias = -0.0004;
    this.#sun.shadow.radius = 2.5;
    this.#scene.fog = this.#fog;
    this.#scene.add(this.#sun, this.#sun.target, this.#fill, this.#sky.mesh, setUp.root);
    if (!full) setUp.coarsen();
    this.rig = new CameraRig(this.#main);
    this.rig.instant = options.reducedMotion ?? false;
    this.#smallRig.instant = true;
    this.#main.layers.enable(CLOSE_LAYER);
    this.#stopListening = this.rig.listen(this.canvas, () => this.invalidate());
    this.#observer = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(() => this.resize());
    this.#observer?.observe(this.#ownsCanvas ? target : this.canvas);
    this.canvas.addEventListener('webglcontextrestored', this.#restored);
    this.setTheme(options.theme ?? 'snow');
    this.resize();
  }

  describe(text: string): void {
    this.canvas.setAttribute('aria-label', text);
  }

  get camera(): CameraName {
    return this.#camera;
  }

  /** @throws RangeError for a camera this scene does not have */
  setCamera(name: CameraName): void {
    if (!this.#setUp.cameras.includes(name)) {
      throw new RangeError(`camera: ${name} found; ${this.#setUp.cameras.join(', ')} are accepted`);
    }
    this.#camera = name;
    // Before there is anything to see there is nowhere to ease from.
    if (this.#filled) this.rig.change();
    this.invalidate();
  }

  /** Shows or hides the small picture; `camera` chooses what it shows, null the scene's own choice. */
  setInset(shown: boolean, camera: CameraName | null = null): void {
    this.#inset = shown;
    this.#insetCamera = camera;
    this.invalidate();
  }

  setTheme(name: ThemeName): void {
    const theme = THEMES[name];
    this.#theme = theme;
    this.#sun.color.set(theme.sunColour);
    this.#sun.intensity = theme.sunStrength;
    this.#fill.color.set(theme.skyLight);
    this.#fill.groundColor.set(theme.groundLight);
    this.#fill.intensity = theme.fillStrength;
    this.#fog.color.set(theme.skyHorizon);
    this.#sky.applyTheme(theme);
    this.#setUp.applyTheme(theme);
    this.invalidate();
  }

  update(input: Input): void {
    this.#setUp.update(input);
    this.#filled = true;
    this.invalidate();
  }

  resize(): void {
    const box = this.canvas.getBoundingClientRect();
    const width = Math.max(1, Math.round(box.width));
    const height = Math.max(1, Math.round(box.height));
    const ratio = Math.min(window.devicePixelRatio || 1, this.#options.pixelRatioLimit ?? 2);
    if (width === this.#width && height === this.#height && ratio === this.#renderer.getPixelRatio()) return;
    this.#width = width;
    this.#height = height;
    this.#renderer.setPixelRatio(ratio);
    this.#renderer.setSize(width, height, false);
    this.draw(0);
  }

  /** Asks for one picture at the next chance; many calls make one picture. */
  invalidate(): void {
    if (this.#request === 0 && !this.#disposed) this.#request = requestAnimationFrame(this.#tick);
  }

  /** Draws now. */
  draw(seconds: number): void {
    if (this.#disposed) return;
    const began = performance.now();
    this.#setUp.refresh();
    this.#aimSun();
    this.#renderer.info.reset();
    this.#renderer.clear();
    // With the small picture shown, the subject is framed and centred in the room left beside it.
    const taken = this.#inset ? 0.62 * this.#insetWidth() : 0;
    const room = (this.#width - taken) / this.#height;
    this.#setUp.pose(this.#camera, room, this.#pose);
    if (taken > 0)
      this.#main.setViewOffset(this.#width, this.#height, taken / 2, 0, this.#width, this.#height);
    else this.#main.clearViewOffset();
    this.rig.apply(this.#pose, room, this.#width / this.#height, seconds);
    chooseLabels(this.#main, this.#setUp.detailLabels(this.#camera));
    this.#renderer.setScissorTest(false);
    this.#renderer.setViewport(0, 0, this.#width, this.#height);
    const covered = this.#inset ? this.#insetWidth() : 0;
    this.#cover.width = covered === 0 ? 0 : covered + 18;
    this.#cover.height = covered === 0 ? 0 : covered * 0.8 + 18;
    this.#picture(
      this.#main,
      this.rig.distance,
      this.#width,
      this.#height,
      Math.max(17, Math.min(26, 0.07 * this.#height), 0.04 * this.#height) * this.#theme.emphasis,
      this.#cover,
    );
    if (this.#inset) this.#drawInset();
    this.#frames++;
    this.#cpu = performance.now() - began;
  }

  /** Slope coordinates under a point of the page; null beside the groomed snow. */
  pick(clientX: number, clientY: number): { x: number; y: number } | null {
    const box = this.canvas.getBoundingClientRect();
    const at = new Vector2(
      ((clientX - box.left) / box.width) * 2 - 1,
      1 - ((clientY - box.top) / box.height) * 2,
    );
    const ray = new Raycaster();
    ray.setFromCamera(at, this.#main);
    const hit = ray.intersectObject(this.#setUp.snow, false)[0];
    return hit ? this.#setUp.frame.locate(hit.point) : null;
  }

  /** Page position of a slope point; null behind the camera. */
  project(x: number, y: number, z = 0): { clientX: number; clientY: number } | null {
    const p = this.#setUp.frame.place(x, y, z, new Vector3()).project(this.#main);
    if (p.z > 1) return null;
    const box = this.canvas.getBoundingClientRect();
    return {
      clientX: box.left + ((p.x + 1) / 2) * box.width,
      clientY: box.top + ((1 - p.y) / 2) * box.height,
    };
  }

  /** The picture as PNG; null where it is too large for the machine. */
  snapshot(): Promise<Blob | null> {
    // Drawing and reading in one task: the drawing buffer is emptied once the page has shown it.
    this.draw(0);
    return new Promise(resolve => this.canvas.toBlob(resolve, 'image/png'));
  }

  stats(): SceneStats {
    const { calls, triangles } = this.#renderer.info.render;
    return { drawCalls: calls, triangles, frames: this.#frames, cpuMs: this.#cpu };
  }

  dispose(): void {
    this.#disposed = true;
    cancelAnimationFrame(this.#request);
    this.#stopListening();
    this.#observer?.disconnect();
    this.canvas.removeEventListener('webglcontextrestored', this.#restored);
    this.#setUp.dispose();
    this.#sky.dispose();
    this.#sun.dispose();
    this.#fill.dispose();
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
    if (this.#ownsCanvas) this.canvas.remove();
  }

  readonly #restored = (): void => this.invalidate();

  readonly #tick = (now: number): void => {
    this.#request = 0;
    // A first picture after a rest must not jump by the length of the rest.
    const seconds = this.#last === 0 ? 0 : Math.min(0.1, (now - this.#last) / 1000);
    const moving = this.#setUp.playback.advance(seconds);
    this.draw(seconds);
    if (moving || this.rig.easing || this.#setUp.playback.playing) {
      this.#last = now;
      this.invalidate();
    } else this.#last = 0;
  };

  #aimSun(): void {
    const reach = this.#setUp.shadowReach;
    const centre = this.#setUp.shadowCentre;
    this.#sun.target.position.copy(centre);
    this.#sun.position.copy(centre).addScaledVector(SUN, reach * 6);
    const camera = this.#sun.shadow.camera;
    if (camera.right !== reach) {
      camera.left = -reach;
      camera.right = reach;
      camera.top = reach;
      camera.bottom = -reach;
      camera.near = reach * 0.5;
      camera.far = reach * 14;
      camera.updateProjectionMatrix();
    }
  }

  #picture(
    camera: PerspectiveCamera,
    distance: number,
    width: number,
    height: number,
    labelPx: number,
    cover?: { width: number; height: number },
  ): void {
    const ratio = this.#renderer.getPixelRatio();
    this.#ribbons.size.set(width * ratio, height * ratio);
    this.#setUp.labels.fit(camera, width, height, labelPx, cover);
    this.#sky.mesh.position.copy(camera.position);
    // Seen from afar the whole hill must stay clear of the haze.
    this.#fog.near = 60 + 1.6 * distance;
    this.#fog.far = 260 + 2.6 * distance;
    this.#renderer.render(this.#scene, camera);
  }

  /** Width of the small picture; 0 where the page is too small for one. */
  #insetWidth(): number {
    // A low picture keeps it large enough to read.
    const tall = Math.max(this.#height * 0.42, Math.min(this.#height * 0.66, 150));
    const width = Math.round(Math.min(this.#width * 0.3, tall));
    return width < 96 ? 0 : width;
  }

  #drawInset(): void {
    const width = this.#insetWidth();
    if (width === 0) return;
    const height = Math.round(width * 0.8);
    const left = this.#width - width - 16;
    const bottom = 16;
    const renderer = this.#renderer;
    renderer.setScissorTest(true);
    renderer.setScissor(left - 2, bottom - 2, width + 4, height + 4);
    renderer.setClearColor(this.#theme.frame, 1);
    renderer.clear();
    renderer.setScissor(left, bottom, width, height);
    renderer.setViewport(left, bottom, width, height);
    renderer.setClearColor(this.#theme.skyHorizon, 1);
    renderer.clear();
    const looks = this.#insetCamera ?? this.#setUp.insetFor(this.#camera);
    this.#setUp.dress?.(true, looks);
    chooseLabels(this.#small, this.#setUp.detailLabels(looks), false);
    this.#setUp.pose(looks, width / height, this.#pose);
    this.#smallRig.apply(this.#pose, width / height, width / height, 0);
    const labelPx = Math.min(21 * this.#theme.emphasis, 0.19 * height);
    const shadows = renderer.shadowMap.autoUpdate;
    renderer.shadowMap.autoUpdate = false;
    this.#picture(this.#small, this.#smallRig.distance, width, height, labelPx);
    renderer.shadowMap.autoUpdate = shadows;
    this.#setUp.dress?.(false, looks);
    renderer.setScissorTest(false);
  }
}
