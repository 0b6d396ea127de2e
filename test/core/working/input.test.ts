import { expect, test } from 'vitest';
import { input } from '../../../core/working/index.ts';

test('an input names its number by key, by sentence where there is more to say, and only where it came from', () => {
  expect(input('theta', '\\theta', 'working.edgeAngle', 0.8, 'rad')).toEqual({
    name: 'theta',
    symbol: '\\theta',
    meaning: { key: 'working.edgeAngle' },
    value: 0.8,
    unit: 'rad',
  });
  const torque = { key: 'carve.torque', values: { end: 'tip' } } as const;
  expect(input('A', 'A', torque, 3, 'N*m^2', 'carve.turnRadius')).toMatchObject({
    meaning: torque,
    from: 'carve.turnRadius',
  });
});
