import { evaluate } from 'mathjs';
import { expect, it } from 'vitest';
import { catalogueRadiusWorking, checkPair, controlRadiusWorking } from '../../../core/rules/index.ts';

it('the working of the control radius evaluates to its result', () => {
  const working = controlRadiusWorking({
    developedLength: 1.9304,
    tailToWaist: 0.86,
    frontWidth: 0.09053,
    rearWidth: 0.083,
    waistWidth: 0.065,
  });
  const scope = Object.fromEntries(working.inputs.map(input => [input.name, input.value]));
  expect(evaluate(working.formula, scope)).toBeCloseTo(working.result.value, 9);
  expect(working.result.value).toBeCloseTo(30.539, 3);
});

it('the working of the catalogue radius evaluates to what the check finds', () => {
  const pair = { lengthMm: 1650, contactLengthMm: 1450, tipWidthMm: 116, waistWidthMm: 66, tailWidthMm: 104 };
  const working = catalogueRadiusWorking(pair);
  const scope = Object.fromEntries(working.inputs.map(input => [input.name, input.value]));
  expect(evaluate(working.formula, scope)).toBeCloseTo(working.result.value, 9);
  const check = checkPair(pair, { category: 'U16 boys', discipline: 'GS' });
  expect(check.items.find(item => item.quantity === 'radiusM')?.found).toBeCloseTo(working.result.value, 9);
});
