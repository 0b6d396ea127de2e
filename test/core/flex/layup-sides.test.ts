import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layupSection } from '../../../core/flex/index.ts';
import type { Layup, SideStrip } from '../../../core/pair/index.ts';

const steel: SideStrip = { width: 2e-3, youngs: 208e9, shear: 80e9, density: 7850 };
const abs: SideStrip = { width: 6e-3, youngs: 2.2e9, shear: 0.8e9, density: 1050 };
const layer = (thickness: number, youngs: number, widthShare = 1) => ({
  material: 'any',
  youngs,
  shear: youngs / 3,
  density: 700,
  thickness,
  widthShare,
});
const layers = [layer(1.2e-3, 0.8e9), layer(0.5e-3, 71.7e9), layer(10e-3, 12e9, 0.8), layer(0.5e-3, 71.7e9)];
const W = 0.066;

/** The same sums over thin slices of height, each asked what lies there. */
function bySlices({ layers: all, edges, sidewalls }: Layup, of: 'youngs' | 'shear'): number {
  const top = all.reduce((sum, { thickness }) => sum + (thickness as number), 0);
  const count = 12200;
  const step = top / count;
  const rows: { z: number; stiff: number }[] = [];
  for (let i = 0; i < count; i++) {
    const z = (i + 0.5) * step;
    let end = 0;
    const here = all.find(({ thickness }) => {
      end += thickness as number;
      return z < end;
    })!;
    const side = edges && z < edges.height ? edges : sidewalls;
    const sides = side ? 2 * side.width : 0;
    const stiff = Math.min(W * here.widthShare, W - sides) * here[of] + (side ? sides * side[of] : 0);
    rows.push({ z, stiff });
  }
  const total = rows.reduce((sum, { stiff }) => sum + stiff, 0);
  const axis = rows.reduce((sum, { z, stiff }) => sum + z * stiff, 0) / total;
  return rows.reduce((sum, { z, stiff }) => sum + stiff * (z - axis) ** 2 * step, 0);
}

describe('edges and sidewalls of a layup', () => {
  const sided: Layup = { layers, edges: { ...steel, height: 2e-3 }, sidewalls: abs };

  it('bend and twist the section as the same rectangles cut into thin slices do', () => {
    for (const layup of [sided, { layers }, { layers, edges: sided.edges }, { layers, sidewalls: abs }]) {
      const section = layupSection(layup, W, 0);
      expect(section.bending / bySlices(layup, 'youngs')).toBeCloseTo(1, 5);
      expect(section.torsion / (4 * bySlices(layup, 'shear'))).toBeCloseTo(1, 5);
    }
  });

  it('steel takes the place of the base beside it, so the mass grows by the difference', () => {
    const bare = layupSection({ layers }, W, 0).massPerLength;
    const edged = layupSection({ layers, edges: { ...steel, height: 1e-3 } }, W, 0).massPerLength;
    expect(edged - bare).toBeCloseTo(2 * 2e-3 * 1e-3 * (7850 - 700), 9);
  });

  it('of the same stuff as the layer beside them change nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 0.03, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.02, noNaN: true }),
        (width, height) => {
          const wood = layer(0.01, 12e9);
          const own = { width, youngs: wood.youngs, shear: wood.shear, density: wood.density };
          const plain = layupSection({ layers: [wood] }, W, 0);
          const same = layupSection({ layers: [wood], edges: { ...own, height }, sidewalls: own }, W, 0);
          for (const key of ['bending', 'torsion', 'massPerLength', 'neutralAxis', 'thickness'] as const)
            expect(same[key] / plain[key]).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('say which field is too wide for the ski', () => {
    expect(() => layupSection({ layers, sidewalls: { ...abs, width: 0.033 } }, W, 0)).toThrow(
      expect.objectContaining({ field: 'sidewalls.widthMm' }),
    );
  });
});
