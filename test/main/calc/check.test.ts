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

test('check against an edition of one’s own, and in a lower-level race', async () => {
  const limit = {
    rule: 'length at least',
    quantity: 'lengthMm',
    disciplines: ['SL'],
    categories: ['men'],
    least: 1600,
    lowerLevelTolerance: 60,
    status: 'own entry',
    source: 'the sheet on the wall',
  };
  const own = { format: 'turnwright.rules', version: 1, edition: 'Club cup', limits: [limit] };
  const edition = await write('club.rules.json', own);
  const check = (...options: string[]) =>
    json('check', file, '--discipline', 'SL', '--edition', edition, ...options);
  expect(await check()).toMatchObject({ edition: 'Club cup', verdict: 'fails', items: [{ found: 1550 }] });
  expect(await check('--lower-level')).toMatchObject({ verdict: 'passes' });
  const bad = await write('bad.rules.json', { ...own, limits: [{ ...limit, least: -1 }] });
  expect(await run(['check', file, '--edition', bad])).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringMatching(
      /bad\.rules\.json: limits\[0\]\.least: found -1; accepted is a number above 0\.\n$/,
    ),
  });
});

test('check says how the control goes on from a radius under the limit', async () => {
  const control = {
    developedLengthMm: 1930,
    tailToWaistMm: 860,
    frontWidthMm: 92.5,
    rearWidthMm: 83,
    waistWidthMm: 65,
  };
  const told = await run([
    'check',
    await write('under.pair.json', { ...larch, lengthMm: 1930, control }),
    '--discipline',
    'GS',
  ]);
  // 30/1.015 = 29.557 m.
  expect(told.out).toMatch(/radius at least: .* their mean must be at least 29\.56 m\./);
});
