import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { benchPress, bendingOf, bendTest, flexWorkings } from '../../../core/flex/index.ts';
import { invented } from './ski.ts';

test('a ski without a stiffness profile is told what it needs', () => {
  expect(bendTest(invented({ bending: null }))).toEqual({
    ok: false,
    needs: 'a stiffness profile (bending)',
  });
});

test('the readings fit together', () => {
  const answer = bendTest(invented(), { loads: [50, 100, 400] });
  if (!answer.ok) throw new Error(answer.needs);
  for (const { loadN, deflectionMm, flatTableDeflectionMm } of answer.curve) {
    expect(loadN / deflectionMm).toBeCloseTo(answer.springNPerMm, 9);
    expect(flatTableDeflectionMm).toBeLessThanOrEqual(deflectionMm + 1e-9);
    expect(flatTableDeflectionMm).toBeLessThanOrEqual(8);
    if (loadN < answer.firstTouchN) expect(flatTableDeflectionMm).toBeCloseTo(deflectionMm, 6);
  }
  const deepest = Math.max(...answer.shape.map(point => point.deflectionMm));
  expect(deepest).toBeGreaterThanOrEqual(answer.curve[2].deflectionMm - 1e-9);
  expect(answer.shape[answer.shape.length - 1].fromTailMm).toBeCloseTo(1360, 9);
  expect(answer.largeBend).toMatch(/small-deflection answer/);
});

test('a span is centred on the contact length and the press may be moved', () => {
  const ski = invented();
  const answer = bendTest(ski, { span: 1, at: 0.7, loads: [100] });
  const setup = { length: 1.36, rear: 0.18, front: 1.18, at: 0.7, load: 100 };
  expect(answer.ok && answer.springNPerMm).toBeCloseTo(benchPress(bendingOf(ski)!, setup).spring / 1e3, 6);
});

test('options that cannot be are refused by name', () => {
  expect(() => bendTest(invented(), { span: 2 })).toThrow(/span: 2000 mm found/);
  expect(() => bendTest(invented(), { at: 1.4 })).toThrow(/at: load at 1\.4 m found/);
  expect(() => bendTest(invented(), { loads: [-1] })).toThrow(/load: -1 N found/);
  expect(() => bendTest(invented(), { loads: [] })).toThrow(/load: none found/);
});

test('every working says what the code computed', () => {
  const workings = flexWorkings(invented());
  expect(workings.map(working => working.key)).toEqual([
    'flex.spring',
    'flex.uniform-equivalent',
    'flex.first-touch-uniform',
    'flex.flatten-index',
    'flex.spring-shovel',
    'flex.spring-rear',
    'flex.spring-balance',
    'flex.torsional-spring',
    'flex.first-frequency-uniform',
  ]);
  for (const working of workings) {
    const scope = Object.fromEntries(working.inputs.map(({ name, value }) => [name, value]));
    expect(evaluate(working.formula, scope) / working.result.value).toBeCloseTo(1, 9);
  }
  expect(flexWorkings(invented({ bending: null }))).toEqual([]);
});
