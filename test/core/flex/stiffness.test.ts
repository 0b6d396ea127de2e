import { expect, test } from 'vitest';
import {
  bendingOf,
  layupSection,
  localWidth,
  massPerLength,
  profileOf,
  torsionOf,
} from '../../../core/flex/index.ts';
import type { Layup } from '../../../core/pair/index.ts';
import { told } from '../fault/told.ts';
import { invented } from './ski.ts';

const layup: Layup = {
  layers: [
    { material: 'aluminium', youngs: 71.7e9, shear: 26.9e9, density: 2800, thickness: 5e-4, widthShare: 1 },
    {
      material: 'ash',
      youngs: 12e9,
      shear: 1.31e9,
      density: 600,
      thickness: [
        { x: 0, thickness: 0.004 },
        { x: 0.68, thickness: 0.011 },
        { x: 1.36, thickness: 0.004 },
      ],
      widthShare: 0.9,
    },
    { material: 'aluminium', youngs: 71.7e9, shear: 26.9e9, density: 2800, thickness: 5e-4, widthShare: 1 },
  ],
};

test('stations are met and held constant outside', () => {
  const profile = bendingOf(invented())!;
  expect(profile(0.68)).toBeCloseTo(320, 12);
  expect(profile(-1)).toBe(60);
  expect(profile(9)).toBe(50);
});

test('a formula runs from the rear contact point to the front and is held outside', () => {
  const profile = profileOf({ kind: 'formula', newtonM2: '100 + 50*s' }, 1.4);
  expect(profile(0.7)).toBeCloseTo(125, 12);
  expect(profile(-0.1)).toBe(100);
  expect(profile(2)).toBe(150);
});

test('absent bending is null, absent torsion is rigid', () => {
  expect(bendingOf(invented({ bending: null }))).toBeNull();
  expect(torsionOf(invented({ torsion: null }))).toBeNull();
});

test('stations out of order or not positive are refused by field', () => {
  const bad = (stations: { x: number; newtonM2: number }[]) => () =>
    profileOf({ kind: 'stations', stations }, 1.4);
  expect(
    bad([
      { x: 1, newtonM2: 5 },
      { x: 0, newtonM2: 5 },
    ]),
  ).toThrow(expect.objectContaining({ field: 'bending.stations[1]' }));
  expect(
    bad([
      { x: 0, newtonM2: 5 },
      { x: 1, newtonM2: -5 },
    ]),
  ).toThrow(expect.objectContaining({ field: 'bending' }));
});

test('the three widths are met by the parabola, stations by the interpolant', () => {
  const width = localWidth(invented());
  expect(width(0)).toBeCloseTo(0.104, 12);
  expect(width(0.64)).toBeCloseTo(0.066, 12);
  expect(width(1.36)).toBeCloseTo(0.117, 12);
  const stations = [0, 0.3, 0.6, 1, 1.36].map((x, i) => ({ x, width: 0.1 - 0.01 * (i % 3) }));
  const measured = localWidth(invented({ widthStations: stations }));
  for (const { x, width: w } of stations) expect(measured(x)).toBeCloseTo(w, 12);
});

test('a layup gives both stiffnesses and the mass at each station', () => {
  const ski = invented({ bending: { kind: 'layup', layup }, torsion: { kind: 'layup', layup } });
  const width = localWidth(ski);
  const [ei, gj, mu] = [bendingOf(ski)!, torsionOf(ski)!, massPerLength(ski)!];
  for (const x of [0, 0.2, 0.68, 1.1]) {
    const section = layupSection(layup, width(x), x);
    expect(ei(x)).toBeCloseTo(section.bending, 9);
    expect(gj(x)).toBeCloseTo(section.torsion, 9);
    expect(mu(x)).toBeCloseTo(section.massPerLength, 12);
  }
  expect(ei(0.68)).toBeGreaterThan(ei(0.2));
  expect(told(() => profileOf({ kind: 'layup', layup }, 1.4))[0]).toMatch(
    /a layup without a width is not accepted; accepted is .* the width along the ski/,
  );
});

test('one layer bends as width × thickness³/12 whatever the layers it is cut into', () => {
  const layer = (thickness: number) => ({
    material: 'any',
    youngs: 1e10,
    shear: 4e9,
    density: 1000,
    thickness,
    widthShare: 1,
  });
  const whole = layupSection({ layers: [layer(0.01)] }, 0.07, 0);
  const cut = layupSection({ layers: [layer(0.003), layer(0.005), layer(0.002)] }, 0.07, 0);
  expect(whole.bending).toBeCloseTo((1e10 * 0.07 * 0.01 ** 3) / 12, 9);
  expect(whole.torsion).toBeCloseTo((4e9 * 0.07 * 0.01 ** 3) / 3, 9);
  expect(cut.bending).toBeCloseTo(whole.bending, 9);
  expect(cut.torsion).toBeCloseTo(whole.torsion, 9);
});

test('mass is shared out by width and needs to be stated', () => {
  const mu = massPerLength(invented())!;
  expect(mu(0) / mu(0.64)).toBeCloseTo(0.104 / 0.066, 9);
  let sum = 0;
  for (let i = 0; i < 2000; i++) sum += (mu(((i + 0.5) * 1.36) / 2000) * 1.36) / 2000;
  expect(sum).toBeCloseTo((1.9 * 1.36) / 1.55, 6);
  expect(massPerLength(invented({ mass: null }))).toBeNull();
});

test('a stiffness that vanishes, is negative or is not a number is refused with the place', () => {
  const make = (newtonM2: string) => () =>
    profileOf({ kind: 'formula', newtonM2 }, 1.4, { field: 'torsion' });
  expect(told(make('100*s'))).toEqual([
    'torsion.newtonM2: 0 N·m² at s = 0 is not accepted; accepted is a finite number over 0 all along',
  ]);
  expect(told(make('50 - 100*s'))[0]).toMatch(/at s = 0\.5 is/);
  expect(told(make('sqrt(s-0.5)'))[0]).toMatch(/NaN N·m²/);
  expect(told(make('1/(s-1)^2'))[0]).toMatch(/Infinity N·m² at s = 1 is/);
});

test('a formula that cannot be used is refused by its field', () => {
  const make = () => profileOf({ kind: 'formula', newtonM2: '100*x' }, 1.4, { field: 'torsion' });
  expect(told(make)[0]).toMatch(
    /^torsion\.newtonM2: the name "x" in "100\*x" is not accepted; accepted is numbers, s, pi/,
  );
});
