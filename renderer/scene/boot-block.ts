import { BufferAttribute, BufferGeometry } from 'three';

/** One tapered block: half widths and ends at its foot and its head, m. */
interface Block {
  readonly low: readonly [half: number, back: number, front: number, z: number];
  readonly high: readonly [half: number, back: number, front: number, z: number];
  readonly grey: number;
}

/**
 * A plain plate and boot, sitting on z = 0 over the origin and facing +y.
 * @param sole boot sole length, m
 */
export function bootBlock(sole: number): BufferGeometry {
  const half = sole / 2;
  const blocks: Block[] = [
    {
      low: [0.031, -half * 1.28, half * 1.28, 0],
      high: [0.029, -half * 1.22, half * 1.22, 0.016],
      grey: 0.12,
    },
    {
      low: [0.036, -half * 1.2, -half * 0.72, 0.016],
      high: [0.03, -half * 1.12, -half * 0.8, 0.05],
      grey: 0.24,
    },
    {
      low: [0.036, half * 0.74, half * 1.2, 0.016],
      high: [0.03, half * 0.82, half * 1.1, 0.05],
      grey: 0.24,
    },
    { low: [0.034, -half, half, 0.016], high: [0.035, -half, half, 0.04], grey: 0.2 },
    {
      low: [0.045, -half * 0.95, half * 0.92, 0.04],
      high: [0.043, -half * 0.9, half * 0.42, 0.115],
      grey: 0.34,
    },
    {
      low: [0.046, -half * 0.9, half * 0.3, 0.115],
      high: [0.047, -half * 0.8, half * 0.36, 0.2],
      grey: 0.42,
    },
  ];
  const positions: number[] = [];
  const normals: number[] = [];
  const colours: number[] = [];
  for (const block of blocks) addBlock(block, positions, normals, colours);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(normals), 3));
  geometry.setAttribute('color', new BufferAttribute(new Float32Array(colours), 3));
  return geometry;
}

/** Corner numbers of the six faces, counter-clockwise from outside. */
const FACES = [
  [0, 3, 2, 1],
  [4, 5, 6, 7],
  [0, 1, 5, 4],
  [1, 2, 6, 5],
  [2, 3, 7, 6],
  [3, 0, 4, 7],
];

function addBlock(block: Block, positions: number[], normals: number[], colours: number[]): void {
  const corners: number[][] = [];
  for (const [half, back, front, z] of [block.low, block.high]) {
    corners.push([-half, back, z], [half, back, z], [half, front, z], [-half, front, z]);
  }
  for (const face of FACES) {
    const [a, b, c, d] = face.map(i => corners[i]);
    const u = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    const v = [d[0] - b[0], d[1] - b[1], d[2] - b[2]];
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const norm = Math.hypot(n[0], n[1], n[2]);
    for (const corner of [a, b, c, a, c, d]) {
      positions.push(...corner);
      normals.push(n[0] / norm, n[1] / norm, n[2] / norm);
      colours.push(block.grey, block.grey, block.grey * 1.04);
    }
  }
}
