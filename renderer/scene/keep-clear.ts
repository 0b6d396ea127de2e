import { type PerspectiveCamera, Vector3 } from 'three';

/** A part of the picture, px from its upper left corner. */
export interface PictureBox {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const at = new Vector3();

/**
 * The part of a picture that world points take up, grown so that the middle of a plate `sizePx` high outside it
 * means that the plate is outside. Nothing in front of the camera gives an empty box.
 */
export function clearBox(
  points: readonly Vector3[],
  camera: PerspectiveCamera,
  widthPx: number,
  heightPx: number,
  sizePx: number,
  out: PictureBox,
): void {
  out.left = out.top = Infinity;
  out.right = out.bottom = -Infinity;
  for (const point of points) {
    const { x, y, z } = at.copy(point).project(camera);
    if (z > 1) continue;
    out.left = Math.min(out.left, ((x + 1) / 2) * widthPx - sizePx / 2);
    out.right = Math.max(out.right, ((x + 1) / 2) * widthPx + sizePx / 2);
    out.top = Math.min(out.top, ((1 - y) / 2) * heightPx - sizePx);
    out.bottom = Math.max(out.bottom, ((1 - y) / 2) * heightPx + sizePx);
  }
}

/**
 * How far a plate, its middle at (x, y) and `half` wide to either side, has to move to stand beside the clear
 * part: to the side on which its anchor lies, else to the other; 0 where it is clear already or neither side of
 * a picture `widthPx` wide has room for it.
 */
export function besideClear(
  x: number,
  y: number,
  half: number,
  anchor: number,
  clear: PictureBox,
  widthPx: number,
): number {
  const { left, right, top, bottom } = clear;
  if (y <= top || y >= bottom || x + half <= left || x - half >= right) return 0;
  const toLeft = left - half - x;
  const toRight = right + half - x;
  const leftFits = left - 2 * half >= 0;
  const rightFits = right + 2 * half <= widthPx;
  if (leftFits && (!rightFits || anchor < (left + right) / 2)) return toLeft;
  return rightFits ? toRight : 0;
}
