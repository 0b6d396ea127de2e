// @module-tag slow
import { availableParallelism } from 'node:os';
import { expect, test } from 'vitest';
import { sweepOnAllCores } from '../../../main/calc/sweep-cores.ts';
import { type Sweep, sweepRows } from '../../../main/calc/sweep-row.ts';
import type { Cell } from '../../../main/calc/table.ts';
import { file, json, larch, run, write } from './drive.ts';

const linesOf = (out: string) =>
  out
    .trimEnd()
    .split('\n')
    .map(line => JSON.parse(line));

test('sweep streams the rows of the grid in order, and tells the ones it cannot answer', async () => {
  const { code, out } = await run([
    'sweep',
    file,
    '--vary',
    'waistWidthMm=60:120:30',
    '--vary',
    'contactLengthMm=1300:1400:5',
  ]);
  expect(code).toBe(0);
  const [heading, ...rows] = out.trimEnd().split('\n');
  expect(heading).toBe(
    'waistWidthMm,contactLengthMm,radiusM,sidecutDepthMm,circleRadiusM,fittedRadiusM,taperDeg,problem',
  );
  expect(rows).toHaveLength(3 * 21);
  expect(rows.map(row => row.split(',').slice(0, 2).join(' ')).slice(20, 22)).toEqual(['60 1400', '90 1300']);
  expect(Number(rows[0].split(',')[2])).toBeCloseTo(1300 ** 2 / (2000 * 101), 6);
  expect(rows[62]).toMatch(/^120,1400,,,,,,.*waistWidthMm/);
});

test('sweep asks the groove too, as JSON lines that agree with carve', async () => {
  const { out } = await run([
    'sweep',
    file,
    '--ask',
    'carve',
    '--vary',
    'edge=30:50:20',
    '--load',
    '1000',
    '--json',
  ]);
  const rows = linesOf(out);
  const { points } = await json('carve', file, '--edge', '30,50', '--load', '1000');
  expect(rows.map(row => row.turnRadiusM)).toEqual(points.map((p: { turnRadiusM: number }) => p.turnRadiusM));
  expect(rows.map(row => row.rearRadiusM)).toEqual(points.map((p: { rearRadiusM: number }) => p.rearRadiusM));
});

test('a sweep may vary the rebound of the snow', async () => {
  const { out } = await run(['sweep', file, '--ask', 'carve', '--vary', 'rebound=0.2:1:0.4', '--json']);
  const rows = linesOf(out);
  const { points } = await json('carve', file, '--edge', '50', '--rebound', '0.6');
  expect(rows).toHaveLength(3);
  expect(rows[1].turnRadiusM).toBeCloseTo(points[0].turnRadiusM, 9);
  expect(rows[2].turnRadiusM).toBeLessThan(rows[0].turnRadiusM);
});

test.each([
  [['waistWidthMm=60:66:1e-9'], /^--vary: 6000000001 rows asked for/],
  [['waistWidthMm=60:62:0'], /^--vary: "waistWidthMm=60:62:0" is not accepted/],
  [['waistWidthMm=60:62:1', 'waistWidthMm=60:62:1'], /^--vary: waistWidthMm is given twice/],
  [['edge=-30:40:10'], /^--vary: edge from -30 to 40 is not accepted; give 0.5 to 85°/],
  [['edge=20:30:5 deg'], /^--vary: "edge=20:30:5 deg" is not accepted/],
  [['rebound=0:1:0.5'], /^--vary: rebound from 0 to 1 is not accepted; give 0.05 to 1 mm/],
  [['fore=-700:0:100'], /^--vary: fore from -700 to 0 is not accepted; give -600 to 600 mm/],
  [['load=100:200:50'], /^--load: is varied as well/],
  [['bending.stations[9].newtonM2=1:2:1'], /is no number of/],
])('%j is refused before the first row', async (vary, message) => {
  const axes = vary.flatMap(axis => ['--vary', axis]);
  const { code, out, err } = await run(['sweep', file, '--ask', 'carve', '--load', '900', ...axes]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(message);
});

test('what no row could answer is an input fault, not a column of complaints', async () => {
  const { bending: _, ...limp } = larch;
  const { code, out, err } = await run([
    'sweep',
    await write('limp.pair.json', limp),
    '--ask',
    'bend',
    '--vary',
    'load=1:2:1',
  ]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('needs a stiffness profile');
});

test('a station of the stiffness and a number left to its usual value may be varied', async () => {
  const stations = [100, 300, 100].map((newtonM2, i) => ({ fromTailMm: 680 * i, newtonM2 }));
  const pair = await write('stations.pair.json', { ...larch, bending: { kind: 'stations', stations } });
  const axes = ['--vary', 'bending.stations[1].newtonM2=200:300:100', '--vary', 'edges.baseBevelDeg=0:1:1'];
  const { out } = await run(['sweep', pair, '--ask', 'bend', ...axes, '--json']);
  const rows = linesOf(out);
  expect(rows.map(row => row['bending.stations[1].newtonM2'])).toEqual([200, 200, 300, 300]);
  const { springNPerMm } = await json('bend', pair);
  expect(rows[3].springNPerMm).toBeCloseTo(springNPerMm, 6);
  expect(rows[0].springNPerMm).toBeLessThan(springNPerMm);
});

test('the other cores answer as this one does, and their rows come in order', async () => {
  const axes = [{ field: 'waistWidthMm', from: 60, step: 0.1, count: 70 }];
  const sweep: Sweep = { pair: larch as Sweep['pair'], axes, ask: 'shape', fixed: {} };
  const rows: (readonly Cell[])[] = [];
  const take = (row: readonly Cell[]) => void rows.push(row);
  await sweepOnAllCores(sweep, 70, take, null);
  expect(rows).toEqual(Array.from({ length: 70 }, (_, row) => sweepRows(sweep)(row)));
});

test('a reader that is behind is waited for: rows do not pile up, and all come in the end', async () => {
  const axes = [{ field: 'waistWidthMm', from: 60, step: 0.01, count: 1000 }];
  const sweep: Sweep = { pair: larch as Sweep['pair'], axes, ask: 'shape', fixed: {} };
  let taken = 0;
  let letGo = () => {};
  const held = new Promise<void>(resolve => {
    letGo = resolve;
  });
  let atHold = 0;
  const done = sweepOnAllCores(sweep, 1000, () => {
    taken += 1;
    if (taken < 20) return;
    if (taken === 20) {
      // Whatever the workers have in hand comes; then nothing, for as long as nobody reads.
      setTimeout(() => {
        atHold = taken;
        letGo();
      }, 1500);
    }
    return held;
  });
  await done;
  expect(taken).toBe(1000);
  expect(atHold).toBeLessThan(20 + 16 * (2 * availableParallelism() + 2));
});
