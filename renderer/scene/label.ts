import {
  CanvasTexture,
  type Group,
  LinearFilter,
  type PerspectiveCamera,
  Sprite,
  SpriteMaterial,
  SRGBColorSpace,
  Vector3,
} from 'three';
import { besideClear, clearBox, type PictureBox } from './keep-clear.ts';
import type { SceneTheme } from './theme.ts';

const SCALE = 2;
const FONT = 22;
const PAD = 9;
const HEIGHT = 34;

/** Layer of small things that only the large picture shows. */
export const CLOSE_LAYER = 1;
/** Layer of the labels that only some cameras show. */
export const DETAIL_LAYER = 2;
/** Layer of the labels that stand for what is too small to be seen, shown by the other cameras. */
export const FAR_LAYER = 3;

/** Lets a camera see the labels of what is near or of what is far; the details in a large picture only. */
export function chooseLabels(camera: PerspectiveCamera, near: boolean, large = true): void {
  for (const [layer, seen] of [
    [DETAIL_LAYER, near && large],
    [FAR_LAYER, !near],
  ] as const) {
    if (seen) camera.layers.enable(layer);
    else camera.layers.disable(layer);
  }
}

/** A short text on a plate that keeps its size on the screen. */
export class Label {
  readonly sprite: Sprite;
  readonly #canvas = document.createElement('canvas');
  readonly #texture: CanvasTexture;
  #text = '';
  #colour = '#000000';
  #theme: SceneTheme | null = null;
  aspect = 1;
  /** −1 the plate ends at its point, 0 is centred on it, 1 begins there. */
  readonly side: -1 | 0 | 1;

  /** @param layer 0 to be seen in the inset too, DETAIL_LAYER where the set-up asks for it */
  constructor(layer = 0, side: -1 | 0 | 1 = 0) {
    this.side = side;
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
    this.sprite.center.x = 0.5 - 0.5 * side;
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
    this.aspect = width / height;
  }

  /** Size for a picture `heightPx` tall, in the same pixels as `heightPx`. */
  fit(camera: PerspectiveCamera, heightPx: number, sizePx: number): void {
    const scale = (2 * sizePx) / (heightPx * camera.projectionMatrix.elements[5]);
    this.sprite.scale.set(scale * this.aspect, scale, 1);
  }

  dispose(): void {
    this.#texture.dispose();
    this.sprite.material.dispose();
  }
}

interface LabelBox {
  label: Label | null;
  x: number;
  y: number;
  half: number;
  /** Moved down and to the right by so much, px. */
  shift: number;
  right: number;
  /** Marks something in the picture. */
  inside: boolean;
}

/** The place nearest to `at` that is `room` away from both ends; `at` where there is not so much room. */
const within = (at: number, room: number, length: number): number =>
  2 * room > length ? at : Math.min(length - room, Math.max(room, at));

/** The labels of one scene, sized together before each picture. */
export class LabelSet {
  readonly labels: Label[] = [];
  readonly #group: Group;
  readonly #at = new Vector3();
  readonly #boxes: LabelBox[] = [];
  #count = 0;
  #clear: readonly Vector3[] = [];
  readonly #free: PictureBox = { left: 0, right: 0, top: 0, bottom: 0 };

  constructor(group: Group) {
    this.#group = group;
  }

  make(layer = 0, side: -1 | 0 | 1 = 0): Label {
    const label = new Label(layer, side);
    this.labels.push(label);
    this.#group.add(label.sprite);
    return label;
  }

  /** World points of what no plate should cover; they may move on. */
  keepClear(points: readonly Vector3[]): void {
    this.#clear = points;
  }

  /**
   * Sizes the labels for one picture, keeps their plates inside it, sets them beside what is to stay clear and
   * moves those apart that would cover each other. What would stand behind `cover`, a box at the lower right in px, is left out.
   */
  fit(
    camera: PerspectiveCamera,
    widthPx: number,
    heightPx: number,
    sizePx: number,
    cover = { width: 0, height: 0 },
  ): void {
    this.#count = 0;
    clearBox(this.#clear, camera, widthPx, heightPx, sizePx, this.#free);
    for (const label of this.labels) {
      const { sprite } = label;
      if (!sprite.visible || !camera.layers.test(sprite.layers)) continue;
      label.fit(camera, heightPx, sizePx);
      this.#at.copy(sprite.position).project(camera);
      if (this.#at.z > 1) continue;
      const box = this.#box(this.#count++);
      box.label = label;
      box.half = (sizePx * label.aspect) / 2 + 3;
      box.x = ((this.#at.x + 1) / 2) * widthPx + (label.side * sizePx * label.aspect) / 2;
      box.y = ((1 - this.#at.y) / 2) * heightPx;
      box.shift = 0;
      box.right = 0;
      // What is marked may stand at the rim of the picture; its plate stays inside whole.
      box.inside =
        box.x > -box.half && box.x < widthPx + box.half && box.y > -sizePx && box.y < heightPx + sizePx;
      if (!box.inside) continue;
      box.right = within(box.x, box.half, widthPx) - box.x;
      box.x += box.right;
      box.shift = within(box.y, sizePx / 2 + 3, heightPx) - box.y;
      const anchor = box.x - (label.side * sizePx * label.aspect) / 2 - box.right;
      const width = widthPx - (box.y > heightPx - cover.height ? cover.width : 0);
      const aside = besideClear(box.x, box.y + box.shift, box.half, anchor, this.#free, width);
      box.right += aside;
      box.x += aside;
    }
    const step = sizePx + 4;
    for (let round = 0; round < 6; round++) {
      let moved = false;
      for (let i = 0; i < this.#count; i++) {
        for (let j = i + 1; j < this.#count; j++) {
          const a = this.#boxes[i];
          const b = this.#boxes[j];
          const gap = b.y + b.shift - a.y - a.shift;
          if (Math.abs(b.x - a.x) >= a.half + b.half || Math.abs(gap) >= step - 0.5) continue;
          const push = ((step - Math.abs(gap)) / 2) * (gap < 0 ? -1 : 1);
          a.shift -= push;
          b.shift += push;
          moved = true;
        }
      }
      for (let i = 0; i < this.#count; i++) {
        const box = this.#boxes[i];
        if (box.inside) box.shift = within(box.y + box.shift, sizePx / 2 + 3, heightPx) - box.y;
      }
      if (!moved) break;
    }
    for (let i = 0; i < this.#count; i++) {
      const { label, shift, right, x, y, half } = this.#boxes[i];
      const { sprite, side, aspect } = label!;
      sprite.center.set(0.5 - 0.5 * side - right / (sizePx * aspect), 0.5 + shift / sizePx);
      const covered = x + half > widthPx - cover.width && y + shift + sizePx / 2 > heightPx - cover.height;
      if (covered) sprite.scale.set(1e-6, 1e-6, 1);
    }
  }

  #box(i: number): LabelBox {
    while (this.#boxes.length <= i)
      this.#boxes.push({ label: null, x: 0, y: 0, half: 0, shift: 0, right: 0, inside: false });
    return this.#boxes[i];
  }

  dispose(): void {
    for (const label of this.labels) label.dispose();
  }
}
