import { expect, test } from 'vitest';
import { file, json, larch, run, write } from './drive.ts';

test('check', async () => {
  const result = await json('check', file, '--category', 'U16 girls', '--discipline', 'sl');
  expect(result).toMatchObject({ discipline: 'SL', category: 'U16 girls', verdict: expect.any(String) });
  expect(Object.keys(result.items[0])).toEqual(['rule', 'limit', 'found', 'plusMinus', 'verdict', 'status']);
  const control = { developedLengthMm: 1650, tailToWaistMm: 740, frontWidthMm: 110, rearWidthMm: 99 };
  const stated = { ...larch, lengthMm: 1650, standingHeightMm: 48, bootSoleHeightMm: 42 };
  const half = await run(['check', await write('half.pair.json', { ...stated, control })]);
  expect(half.out).toContain('S at 1468 mm, H at 74 mm, 1394 mm apart');
  expect(half.out).toContain('missing: control.waistWidthMm');
  const whole = await write('whole.pair.json', { ...stated, control: { ...control, waistWidthMm: 66 } });
  const read = await json('check', whole, '--discipline', 'GS', '--category', 'U16 boys', '--working');
  const found = Object.fromEntries(
    read.items.map((item: { rule: string; found: number }) => [item.rule, item.found]),
  );
  // Derived: L 1394 mm, R 12.618 m.
  expect(found['radius at least']).toBeCloseTo(12.618, 3);
  expect(read.control).toEqual({ frontFromTailMm: 1468, rearFromTailMm: 74, betweenMm: 1394, missing: [] });
  expect(read.workings[0].key).toBe('rules.controlRadius');
  const heights = await json('check', whole, '--discipline', 'SL');
  expect(heights.items.map((item: { found: number }) => item.found)).toEqual(
    expect.arrayContaining([48, 42]),
  );
  const csv = await run(['check', file, '--csv']);
  expect(csv.out.split('\n')[0]).toBe('rule,limit,found,plusMinus,verdict,status');
});
