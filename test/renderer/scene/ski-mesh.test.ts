import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACETS, SKI_VERTICES, SkiMesh } from '../../../renderer/scene/ski-mesh.ts';
import {
  CONTACT_STEPS,
  type SkiForm,
  STATIONS,
  sampleAt,
  skiOutline,
  TAIL_STEPS,
} from '../../../renderer/scene/ski-outline.ts';
import { demoForm } from './preview/demo.ts';

const form: SkiForm = demoForm(1.55, 1.36, 0.117, 0.066, 0.104);
const flat = { x: [0, 1.36], height: [0, 0] };

function vertex(mesh: SkiMesh, station: number, facet: number, end: 0 | 1): number[] {
  const p = mesh.geometry.attributes.position;
  const v = (station * FACETS + facet) * 2 + end;
  return [p.getX(v), p.getY(v), p.getZ(v)];
}

describe('ski outline', () => {
  it('keeps the true edge over the contact length and the overall length beyond it', () => {
    const outline = skiOutline(form);
    expect(outline.halfWidth[TAIL_STEPS]).toBeCloseTo(0.052, 6);
    expect(outline.halfWidth[TAIL_STEPS + CONTACT_STEPS]).toBeCloseTo(0.0585, 6);
    const waist = Math.min(...outline.halfWidth.slice(TAIL_STEPS, TAIL_STEPS + CONTACT_STEPS + 1));
    expect(waist).toBeCloseTo(0.033, 4);
    expect(outline.along[STATIONS - 1] - outline.along[0]).toBeCloseTo(1.55, 6);
    for (let i = 1; i < STATIONS; i++) expect(outline.along[i]).toBeGreaterThan(outline.along[i - 1]);
  });

  it('is 8 mm thick at the contact ends and 18 mm underfoot', () => {
    const { along, thickness } = skiOutline(form);
    expect(sampleAt(along, thickness, 0)).toBeCloseTo(0.008, 6);
    expect(sampleAt(along, thickness, form.contactLength)).toBeCloseTo(0.008, 6);
    expect(sampleAt(along, thickness, form.bootCentre)).toBeCloseTo(0.018, 6);
  });

  it('names what does not fit', () => {
    expect(() => skiOutline({ ...form, length: 1.2 })).toThrow(/1\.2 m is below the contact length 1\.36 m/);
    expect(() => skiOutline({ ...form, halfWidth: [0.05] })).toThrow(/121 stations and 1 half widths/);
  });
});

describe('ski mesh', () => {
  it('puts base, edges and top where the section says', () => {
    const mesh = new SkiMesh(form, '#0072b2');
    mesh.setBend(flat, 1, 1);
    const i = TAIL_STEPS + 40;
    const y = mesh.outline.halfWidth[i];
    expect(vertex(mesh, i, 0, 0)[0]).toBeCloseTo(-y, 6);
    expect(vertex(mesh, i, 0, 0)[2]).toBeCloseTo(0, 9);
    expect(vertex(mesh, i, 2, 1)[0]).toBeCloseTo(y, 6);
    expect(vertex(mesh, i, 6, 0)[2]).toBeCloseTo(mesh.outline.thickness[i], 6);
    expect(vertex(mesh, i, 1, 0)[1]).toBeCloseTo(mesh.outline.along[i] - form.bootCentre, 6);
  });

  it('bends by w(x) from the boot, twists the loaded edge upwards, and multiplies both', () => {
    const mesh = new SkiMesh(form, '#0072b2');
    const n = 69;
    const x = Float64Array.from({ length: n }, (_, k) => (k / (n - 1)) * 1.36);
    const height = x.map(v => 0.05 * (v - form.bootCentre) ** 2);
    const twist = x.map(v => 0.04 * Math.abs(v - form.bootCentre));
    const end = TAIL_STEPS + CONTACT_STEPS;
    const y = mesh.outline.halfWidth[end];
    const w = 0.05 * (1.36 - form.bootCentre) ** 2;
    const phi = 0.04 * (1.36 - form.bootCentre);
    for (const side of [1, -1] as const) {
      for (const times of [1, 3]) {
        mesh.setBend({ x, height, twist }, side, times);
        const right = vertex(mesh, end, 2, 1)[2];
        const left = vertex(mesh, end, 0, 0)[2];
        expect((right + left) / 2).toBeCloseTo(times * w, 3);
        expect(side * (right - left)).toBeCloseTo(2 * y * Math.sin(times * phi), 3);
      }
    }
  });

  it('faces outwards everywhere, by its triangles and by its normals', () => {
    const mesh = new SkiMesh(form, '#0072b2');
    mesh.setBend(flat, 1, 1);
    const p = mesh.geometry.attributes.position;
    const normal = mesh.geometry.attributes.normal;
    const index = mesh.geometry.index!;
    const from = TAIL_STEPS * FACETS * 6;
    const to = (TAIL_STEPS + CONTACT_STEPS) * FACETS * 6;
    for (let t = from; t < to; t += 3) {
      const [a, b, c] = [0, 1, 2].map(k => index.getX(t + k));
      const u = [p.getX(b) - p.getX(a), p.getY(b) - p.getY(a), p.getZ(b) - p.getZ(a)];
      const v = [p.getX(c) - p.getX(a), p.getY(c) - p.getY(a), p.getZ(c) - p.getZ(a)];
      const nx = u[1] * v[2] - u[2] * v[1];
      const nz = u[0] * v[1] - u[1] * v[0];
      const middleX = (p.getX(a) + p.getX(b) + p.getX(c)) / 3;
      const middleZ = (p.getZ(a) + p.getZ(b) + p.getZ(c)) / 3 - 0.004;
      expect(nx * middleX + nz * middleZ).toBeGreaterThan(0);
      expect(nx * normal.getX(a) + nz * normal.getZ(a)).toBeGreaterThan(0);
    }
  });

  it('writes new bends into the same buffers and stays finite for any ski and bend', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2.2, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        (contact, beyond, bend, twist) => {
          const mesh = new SkiMesh(demoForm(contact + beyond, contact, 0.12, 0.07, 0.11), '#888888');
          const array = mesh.geometry.attributes.position.array;
          const x = [0, contact / 2, contact];
          mesh.setBend({ x, height: [bend, 0, bend], twist: [twist, 0, twist] }, -1, 2);
          expect(mesh.geometry.attributes.position.array).toBe(array);
          expect(array.length / 3).toBeGreaterThan(SKI_VERTICES);
          expect(array.every(Number.isFinite)).toBe(true);
          expect(mesh.geometry.attributes.normal.array.every(Number.isFinite)).toBe(true);
          mesh.dispose();
        },
      ),
      { numRuns: 30 },
    );
  });
});
