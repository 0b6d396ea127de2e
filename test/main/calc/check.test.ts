import { expect, test } from 'vitest';
import { radiusOf, reading } from '../../core/rules/control-readings.ts';
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
  expect(read.control).toEqual({
    frontFromTailMm: 1468,
    rearFromTailMm: 74,
    betweenMm: 1394,
    missing: [],
    radiiM: [expect.closeTo(12.618, 3)],
    used: 'first reading',
    comparedM: expect.closeTo(12.618, 3),
    procedure: 'two more readings needed',
  });
  expect(read.workings[0].key).toBe('rules.controlRadius');
  const heights = await json('check', whole, '--discipline', 'SL');
  expect(heights.items.map((item: { found: number }) => item.found)).toEqual(
    expect.arrayContaining([48, 42]),
  );
  const csv = await run(['check', file, '--csv']);
  expect(csv.out.split('\n')[0]).toBe('\uFEFFrule,limit,found,plusMinus,verdict,status');
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
      /bad\.rules\.json: limits\[0\]\.least: -1 is not accepted; accepted is a number above 0\n$/,
    ),
  });
});

test('check says how the control goes on from a radius under the limit', async () => {
  const under = await write('under.pair.json', { ...larch, lengthMm: 1930, control: reading(92.5) });
  const reported = await run(['check', under, '--discipline', 'GS']);
  // 30/1.015 = 29.557 m.
  expect(reported.out).toMatch(/radius at least: .* their mean must be at least 29\.56 m\./);
});

test('check carries the control on to the mean of three readings and says which it used', async () => {
  const first = reading(91.9);
  const with3 = async (name: string, ...fronts: number[]) =>
    write(`${name}.pair.json`, {
      ...larch,
      lengthMm: 1930,
      discipline: 'GS',
      control: { ...first, repeats: fronts.map(reading) },
    });
  // 1.015 × 29.697 = 30.143 m.
  const accepted = await with3('three', 91.6, 91.7);
  const read = await json('check', accepted, '--working');
  expect(read.control).toMatchObject({
    missing: [],
    radiiM: [91.9, 91.6, 91.7].map(front => expect.closeTo(radiusOf(front), 6)),
    used: 'three readings',
    comparedM: expect.closeTo(30.143, 3),
    procedure: 'accepted',
  });
  expect(read.workings.map((each: { key: string }) => each.key).slice(0, 4)).toEqual([
    'rules.threeReadings',
    'rules.controlRadius',
    'rules.controlRadius',
    'rules.controlRadius',
  ]);
  expect((await run(['check', accepted])).out).toMatch(
    /readings of 29\.59, 29\.79, 29\.72 m have a mean of 29\.70 m, and 1\.015 times it, 30\.14 m, is accepted/,
  );
  // A slalom has no least radius here, so no reading is asked to pass.
  const slalom = await json('check', accepted, '--discipline', 'SL');
  expect(slalom.control).toMatchObject({ used: 'first reading' });
  expect(slalom.control).not.toHaveProperty('procedure');
  const refused = await json('check', await with3('refused', 93, 93));
  expect(refused.control).toMatchObject({ used: 'three readings', procedure: 'refused' });
  const half = await with3('half', 91.6);
  expect((await json('check', half)).control).toMatchObject({
    used: 'first reading',
    procedure: 'two more readings needed',
  });
  // 3 × 30/1.015 − 29.587 − 29.786 = 29.297 m.
  expect((await run(['check', half])).out).toMatch(/the third must be at least 29\.30 m/);
  const begun = await write('begun.pair.json', {
    ...larch,
    discipline: 'GS',
    control: { ...first, repeats: [{ ...first, frontWidthMm: undefined }] },
  });
  expect((await json('check', begun)).control.missing).toEqual(['repeats[0].frontWidthMm']);
  expect((await run(['check', begun])).out).toContain('Reading 2 of the control is not complete; missing:');
});
