import { expect, test } from 'vitest';
import { flatTable, layupSection } from '../../core/flex/index.ts';
import type { Layup } from '../../core/pair/index.ts';

/** Rows of material, thickness mm, E GPa, G GPa, density g/cm³, bottom to top. */
function layup(rows: readonly (readonly [string, number, number, number, number])[]): Layup {
  return {
    layers: rows.map(([material, mm, e, g, density]) => ({
      material,
      thickness: mm / 1e3,
      youngs: e * 1e9,
      shear: g * 1e9,
      density: density * 1e3,
      widthShare: 1,
    })),
  };
}

// Materials: ash 12.0 GPa from the Wood Handbook (US Forest Products Laboratory), seen in a secondary copy; ash G
// and all others from memory, confirm. Section values derived from the stated formulas.
const aluminium = ['aluminium', 0.5, 71.7, 26.9, 2.8] as const;
const ash = ['ash', 10, 12, 1.31, 0.6] as const;
const glass = ['glass', 0.6, 40, 4, 1.9] as const;
const full = layup([
  ['PE', 1.2, 0.8, 0.28, 0.94],
  aluminium,
  glass,
  ash,
  glass,
  aluminium,
  ['ABS', 0.4, 2.2, 0.8, 1.05],
]);

// Derived: 65 mm wide, aluminium 0.5 – ash 10 – aluminium 0.5 mm.
test('sandwich of aluminium and ash: EI 193.552, GJ 221.301 N·m²', () => {
  const section = layupSection(layup([aluminium, ash, aluminium]), 0.065, 0);
  expect(section.bending).toBeCloseTo(193.552, 3);
  expect(section.torsion).toBeCloseTo(221.301, 3);
  expect(section.neutralAxis).toBeCloseTo(5.5e-3, 12);
});

// Derived: 66 mm wide, seven layers.
test('seven layers: neutral axis 7.2963 mm, EI 322.288, GJ 314.983 N·m²', () => {
  const section = layupSection(full, 0.066, 0);
  expect(section.neutralAxis * 1e3).toBeCloseTo(7.2963, 4);
  expect(section.bending).toBeCloseTo(322.288, 3);
  expect(section.torsion).toBeCloseTo(314.983, 3);
});

// Derived: 0.8605 kg/m is met with ash at 641 kg/m³; the specific gravity listed, 0.60, gives 0.8334 kg/m.
test('seven layers: mass a length is the sum of density, thickness and width', () => {
  expect(layupSection(full, 0.066, 0).massPerLength).toBeCloseTo(0.066 * 12.628, 9);
  const heavier = {
    layers: full.layers.map(layer => (layer.material === 'ash' ? { ...layer, density: 641 } : layer)),
  };
  expect(layupSection(heavier, 0.066, 0).massPerLength).toBeCloseTo(0.8605, 4);
});

// Magnitudes from memory, confirm: EI 250–700 and GJ 100–350 N·m² underfoot, force to flatten 60–200 N.
test('a plausible layup and taper fall inside the usual magnitudes', () => {
  const section = layupSection(full, 0.066, 0);
  expect(section.bending).toBeGreaterThan(250);
  expect(section.bending).toBeLessThan(700);
  expect(section.torsion).toBeGreaterThan(100);
  expect(section.torsion).toBeLessThan(350);
  const table = flatTable(x => 80 + 420 * (1 - Math.abs(2 * x - 1.4) / 1.4) ** 0.9, {
    length: 1.4,
    camber: 0.01,
    at: 0.7,
  });
  expect(table.firstTouch).toBeGreaterThan(60);
  expect(table.firstTouch).toBeLessThan(200);
});
