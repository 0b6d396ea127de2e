import {
  Color,
  CylinderGeometry,
  InstancedMesh,
  Matrix4,
  MeshLambertMaterial,
  Quaternion,
  Vector3,
} from 'three';
import type { SlopeFrame } from './slope-frame.ts';

/** A gate's turning pole in slope coordinates, m. */
export interface GatePole {
  readonly x: number;
  readonly y: number;
  /** Height, m; 1.8 when absent. */
  readonly height?: number;
  readonly colour?: string;
}

const POLE_COLOURS = ['#d0353f', '#2f6bc4'];

/** Poles of a set as one instanced mesh; colours take turns where none is given. */
export function gatePoles(gates: readonly GatePole[], frame: SlopeFrame): InstancedMesh {
  const mesh = new InstancedMesh(
    new CylinderGeometry(0.022, 0.026, 1, 8),
    new MeshLambertMaterial({ emissive: '#ffffff', emissiveIntensity: 0.012 }),
    Math.max(1, gates.length),
  );
  mesh.count = gates.length;
  const matrix = new Matrix4();
  const base = new Vector3();
  const upright = new Quaternion();
  const size = new Vector3();
  const colour = new Color();
  gates.forEach((gate, i) => {
    const height = gate.height ?? 1.8;
    frame.place(gate.x, gate.y, 0, base);
    base.y += height / 2;
    mesh.setMatrixAt(i, matrix.compose(base, upright, size.set(1, height, 1)));
    mesh.setColorAt(i, colour.set(gate.colour ?? POLE_COLOURS[i % POLE_COLOURS.length]));
  });
  mesh.castShadow = true;
  mesh.frustumCulled = false;
  return mesh;
}
