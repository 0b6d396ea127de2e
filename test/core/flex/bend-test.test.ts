import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { benchPress, bendingOf, bendTest, flexWorkings } from '../../../core/flex/index.ts';
import { say } from '../../../core/language/index.ts';
import { invented } from './ski.ts';

test('a ski without a stiffness profile is told what it needs', () => {
  expect(bendTest(invented({ bending: null }))).toEqual({
    ok: false,
    needs: { key: 'flex.needsBending' },
  });
});

test('the readings fit together', () => {
  const answer = bendTest(invented(), { loads: [50, 100, 400] });
  if (!answer.ok) throw new Error(answer.needs.key);
  for (const { loadN, deflectionMm, flatTableDeflectionMm } of answer.curve) {
    expect(loadN / deflectionMm).toBeCloseTo(answer.springNPerMm, 9);
    expect(flatTableDeflectionMm).toBeLessThanOrEqual(deflectionMm + 1e-9);
    expect(flatTableDeflectionMm).toBeLessThanOrEqual(8);
    if (loadN < answer.firstTouchN) expect(flatTableDeflectionMm).toBeCloseTo(deflectionMm, 6);
  }
  const deepest = Math.max(...answer.shape.map(point => point.deflectionMm));
  expect(deepest).toBeGreaterThanOrEqual(answer.curve[2].deflectionMm - 1e-9);
  expect(answer.shape[answer.shape.length - 1].fromTailMm).toBeCloseTo(1360, 9);
  expect(say(answer.largeBend)).toMatch(/small-deflection answer/);
});

test('a span is centred on the contact length and the press may be moved', () => {
  const ski = invented();
  const answer = bendTest(ski, { span: 1, at: 0.7, loads: [100] });
  const setup = { length: 1.36, rear: 0.18, front: 1.18, at: 0.7, load: 100 };
  expect(answer.ok && answer.springNPerMm).toBeCloseTo(benchPress(bendingOf(ski)!, setup).spring / 1e3, 6);
});

test('options that cannot be are refused by name', () => {
  expect(() => bendTest(invented(), { span: 2 })).toThrow(expect.objectContaining({ field: 'span' }));
  expect(() => bendTest(invented(), { at: 1.4 })).toThrow(expect.objectContaining({ field: 'at' }));
  expect(() => bendTest(invented(), { loads: [-1] })).toThrow(expect.objectContaining({ field: 'load' }));
  expect(() => bendTest(invented(), { loads: [] })).toThrow(expect.objectContaining({ field: 'load' }));
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

test('the workings explain the bench that was asked about', () => {
  const ski = invented();
  const question = { loads: [80, 240], span: 1, at: 0.7 };
  const answer = bendTest(ski, question);
  if (!answer.ok) throw new Error(answer.needs.key);
  const [spring, equivalent] = flexWorkings(ski, question);
  expect(spring.result.value / 1e3).toBeCloseTo(answer.springNPerMm, 9);
  expect(spring.inputs.map(({ value }) => value)).toEqual([
    240,
    expect.closeTo(answer.curve[1].deflectionMm / 1e3, 9),
    expect.closeTo((240 * answer.curve[1].deflectionMm) / 1e3, 6),
  ]);
  expect(say(spring.inputs[0].meaning)).toBe(
    'load at 700\u00a0mm from the rear contact point, supports at 180 and 1180\u00a0mm',
  );
  // A uniform ski comes out again, whatever the bench: c = 3 EI l/(a²(l − a)²), any handbook.
  const uniform = invented({ bending: { kind: 'uniform', newtonM2: 210 } });
  for (const request of [question, {}, { span: 1.1 }, { at: 0.5 }, { loads: [0] }])
    expect(flexWorkings(uniform, request)[1].result.value).toBeCloseTo(210, 6);
  expect(equivalent.inputs.map(({ name, value }) => [name, value])).toEqual([
    ['c', spring.result.value],
    ['a', expect.closeTo(0.52, 12)],
    ['l', expect.closeTo(1, 12)],
  ]);
  expect(flexWorkings(ski, { loads: [0] })[0].inputs[0].value).toBe(100);
});

test('explains the springs of the clamped ski wherever the bench presses', () => {
  const ski = invented();
  const keys = (at: number) => flexWorkings(ski, { at }).map(({ key }) => key);
  expect(keys(0.1 * ski.contactLength)).toEqual(keys(ski.bootCentre));
  expect(keys(ski.bootCentre)).toContain('flex.spring-shovel');
});
