import {
  CanvasTexture,
  type Group,
  LinearFilter,
  type PerspectiveCamera,
  Sprite,
  SpriteMaterial,
  SRGBColorSpace,
} from 'three';
import type { SceneTheme } from './theme.ts';

const SCALE = 2;
const FONT = 22;
const PAD = 9;
const HEIGHT = 34;

/** Layer of the labels that only the large picture shows. */
export const CLOSE_LABELS = 1;

/** A short text on a plate that keeps its size on the screen. */
export class Label {
  readonly sprite: Sprite;
  readonly #canvas = document.createElement('canvas');
  readonly #texture: CanvasTexture;
  #text = '';
  #colour = '#000000';
  #theme: SceneTheme | null = null;
  #aspect = 1;

  /** @param layer 0 to be seen in the inset too, CLOSE_LABELS for the large picture only */
  constructor(layer = 0) {
    this.#canvas.width = 2;
    this.#canvas.height = 2;
    this.#texture = new CanvasTexture(this.#canvas);
    this.#texture.colorSpace = SRGBColorSpace;
    this.#texture.minFilter = LinearFilter;
    this.#texture.generateMipmaps = false;
    this.sprite = new Sprite(
      new SpriteMaterial({
        map: this.#texture,
        depthTest: false,
        depthWrite: false,
        transparent: true,
        sizeAttenuation: false,
        fog: false,
      }),
    );
    this.sprite.renderOrder = 10;
    this.sprite.layers.set(layer);
    this.sprite.visible = false;
  }

  /** Sets text and the colour of its left edge; redraws only on a change. An empty text hides the label. */
  set(text: string, colour: string, theme: SceneTheme): void {
    this.sprite.visible = text !== '';
    if (text === this.#text && colour === this.#colour && theme === this.#theme) return;
    this.#text = text;
    this.#colour = colour;
    this.#theme = theme;
    if (text !== '') this.#draw(theme);
  }

  #draw(theme: SceneTheme): void {
    const context = this.#canvas.getContext('2d')!;
    const font = `600 ${FONT * SCALE}px system-ui, "Segoe UI", "Noto Sans", sans-serif`;
    context.font = font;
    const width = Math.ceil(context.measureText(this.#text).width) + (2 * PAD + 6) * SCALE;
    const height = HEIGHT * SCALE;
    if (this.#canvas.width !== width || this.#canvas.height !== height) {
      this.#canvas.width = width;
      this.#canvas.height = height;
      // A texture cannot change its size on the graphics card; letting go of it makes a new one.
      this.#texture.dispose();
    } else context.clearRect(0, 0, width, height);
    context.fillStyle = theme.plate;
    context.beginPath();
    context.roundRect(0, 0, width, height, 5 * SCALE);
    context.fill();
    context.fillStyle = this.#colour;
    context.beginPath();
    context.roundRect(0, 0, 6 * SCALE, height, [5 * SCALE, 0, 0, 5 * SCALE]);
    context.fill();
    context.fillStyle = theme.ink;
    context.font = font;
    context.textBaseline = 'middle';
    context.fillText(this.#text, (PAD + 6) * SCALE, height / 2 + SCALE);
    this.#texture.needsUpdate = true;
    this.#aspect = width / height;
  }

  /** Size for a picture `heightPx` tall, in the same pixels as `heightPx`. */
  fit(camera: PerspectiveCamera, heightPx: number, sizePx: number): void {
    const scale = (2 * sizePx) / (heightPx * camera.projectionMatrix.elements[5]);
    this.sprite.scale.set(scale * this.#aspect, scale, 1);
  }

  dispose(): void {
    this.#texture.dispose();
    this.sprite.material.dispose();
  }
}

/** The labels of one scene, sized together before each picture. */
export class LabelSet {
  readonly labels: Label[] = [];
  readonly #group: Group;

  constructor(group: Group) {
    this.#group = group;
  }

  make(layer = 0): Label {
    const label = new Label(layer);
    this.labels.push(label);
    this.#group.add(label.sprite);
    return label;
  }

  fit(camera: PerspectiveCamera, heightPx: number, sizePx: number): void {
    for (const label of this.labels) if (label.sprite.visible) label.fit(camera, heightPx, sizePx);
  }

  dispose(): void {
    for (const label of this.labels) label.dispose();
  }
}
