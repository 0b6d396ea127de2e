/** Metres of snow covered by one tile of the relief. */
export const TILE = 1.2;
/** Groomed ridges in one tile: 5 cm apart, about twice the pitch of a groomer's comb, to be read on a screen. */
const RIDGES = 24;

/** Repeatable noise, −1 to 1, that closes on itself every `size` cells. */
function tiledNoise(size: number, seed: number): Float32Array {
  const out = new Float32Array(size * size);
  let state = seed >>> 0 || 1;
  for (let i = 0; i < out.length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    out[i] = state / 2147483648 - 1;
  }
  return out;
}

/** Mean of the neighbours within `radius` cells, the sheet closed on itself. */
function blurred(field: Float32Array, size: number, radius: number): Float32Array {
  const pass = (source: Float32Array, stepX: number, stepY: number) => {
    const out = new Float32Array(source.length);
    for (let y = 0; y < size; y++) {
      for (let x = 0; x < size; x++) {
        let sum = 0;
        for (let k = -radius; k <= radius; k++) {
          const xx = (x + k * stepX + size) % size;
          const yy = (y + k * stepY + size) % size;
          sum += source[yy * size + xx];
        }
        out[y * size + x] = sum / (2 * radius + 1);
      }
    }
    return out;
  };
  return pass(pass(field, 1, 0), 0, 1);
}

/** Height of the groomed snow over one tile, m: ridges down the fall line, broken by crumbs. */
export function corduroyHeights(size: number): Float32Array {
  const crumbs = blurred(tiledNoise(size, 7), size, 1);
  const lumps = blurred(tiledNoise(size, 19), size, 9);
  const wander = blurred(tiledNoise(size, 31), size, 14);
  const out = new Float32Array(size * size);
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const i = y * size + x;
      const phase = (x / size) * RIDGES + wander[i] * 1.1;
      const ridge = Math.abs(Math.sin(Math.PI * phase));
      out[i] = 0.0062 * (ridge ** 0.8 + lumps[i] * 2.2) + 0.0016 * crumbs[i];
    }
  }
  return out;
}

/** Tangent-space normals of a height tile as RGBA bytes; z is up from the snow. */
export function reliefTexels(heights: Float32Array, size: number, tile: number): Uint8Array {
  const data = new Uint8Array(size * size * 4);
  const cell = tile / size;
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const right = heights[y * size + ((x + 1) % size)];
      const left = heights[y * size + ((x + size - 1) % size)];
      const above = heights[((y + 1) % size) * size + x];
      const below = heights[((y + size - 1) % size) * size + x];
      const nx = -(right - left) / (2 * cell);
      const ny = -(above - below) / (2 * cell);
      const norm = Math.hypot(nx, ny, 1);
      const k = 4 * (y * size + x);
      data[k] = Math.round(127.5 + (127.5 * nx) / norm);
      data[k + 1] = Math.round(127.5 + (127.5 * ny) / norm);
      data[k + 2] = Math.round(127.5 + 127.5 / norm);
      data[k + 3] = 255;
    }
  }
  return data;
}

/**
 * Tilt of the light over groomed snow, rad across and down the hill: the slow waves a groomer leaves. Only the
 * shading follows them, so that tracks drawn on the slope plane stay on the snow.
 */
export function groomedTilt(x: number, y: number): { across: number; down: number } {
  return {
    across: 0.05 * Math.sin(0.31 * x + 0.09 * y) + 0.035 * Math.sin(0.17 * x - 0.13 * y + 2.1),
    down: 0.045 * Math.sin(0.19 * y + 0.11 * x + 0.7) + 0.03 * Math.sin(0.43 * y - 0.2 * x),
  };
}

/** Gentle rolling of unprepared snow, m: a few long waves, the same everywhere and every time. */
export function offPisteHeight(x: number, y: number): number {
  return 0.7 * Math.sin(0.071 * x + 0.6) * Math.cos(0.047 * y) + 0.35 * Math.sin(0.11 * x - 0.068 * y + 1.9);
}
