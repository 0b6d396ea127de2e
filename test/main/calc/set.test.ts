// @module-tag slow
import { expect, test } from 'vitest';
import { file, json, larch, run, write } from './drive.ts';

const stating = await write(
  'stating.csv',
  '# mine\ngate,x,y,slope,start speed\n1,1,10,17,34\n2,-1,20,,\n3,1,30,,\n',
);

test('set answers for a rhythmic set by the names of the contract', async () => {
  const rowan = await write('rowan.pair.json', { ...larch, name: 'Rowan 165', waistWidthMm: 70 });
  const result = await json('set', file, rowan, '--gates', '8', '--spacing', '10', '--offset', '1.5');
  expect(Object.keys(result)).toEqual(['setRadiusM', 'pairs', 'pick', 'because', 'remarks', 'asked']);
  expect(result.remarks).toEqual([]);
  // (s² + o²)/(4 o), plane geometry.
  expect(result.setRadiusM).toBeCloseTo((100 + 2.25) / 6, 6);
  expect(Object.keys(result.pairs[0])).toEqual([
    'name',
    'neededEdgeDeg',
    'minHoldDeg',
    'seconds',
    'secondsPlusMinus',
    'gapSeconds',
    'gapPlusMinus',
    'quickest',
    'worth',
    'verdict',
    'turnRadius',
    'rules',
  ]);
  const [first, second] = result.pairs;
  expect(first.gapSeconds).toBe(0);
  expect(second.gapSeconds).toBeCloseTo(second.seconds - first.seconds, 6);
  // Told in hundredths, so half of one is no gap.
  expect(result.pick).toBe(second.gapSeconds > second.gapPlusMinus + 0.005 ? first.name : null);
  expect(first.worth).toContainEqual(
    expect.objectContaining({ input: 'waistWidth', change: 0.5, unit: 'mm', seconds: expect.any(Number) }),
  );
  expect(first.worth.map(({ input }: { input: string }) => input)).toContain('startSpeed');
});

test('set picks none of two that are the same ski, whatever speed is kept, and times them alike', async () => {
  const twin = await write('twin.pair.json', { ...larch, name: 'Rowan 155' });
  const gates = ['--gates', '3', '--spacing', '10', '--offset', '2', '--turn', 'cosine'];
  const slow = await json('set', file, twin, ...gates, '--speed', '20');
  const fast = await json('set', file, twin, ...gates, '--speed', '60');
  expect(slow.pick).toBeNull();
  expect(slow.because).toMatch(/^Level: .* are 0\.00 s apart, no more than is known\. Choose by feel\./);
  expect(slow.pairs.map((pair: { turnRadius: string }) => pair.turnRadius)).toEqual([
    'cosine rule',
    'cosine rule',
  ]);
  const times = (answer: typeof slow) => answer.pairs.map((pair: { seconds: number }) => pair.seconds);
  expect(times(fast)).toEqual(times(slow));
  expect(fast.pairs[0].minHoldDeg).not.toBe(slow.pairs[0].minHoldDeg);
});

test('set finds a ski level with itself without its stiffness', async () => {
  const { bending: _, torsion: __, ...rest } = larch;
  const rigid = await write('rigid.pair.json', { ...rest, name: 'No stiffness' });
  const { pick, pairs } = await json('set', file, rigid, '--gates', '3', '--spacing', '10', '--offset', '2');
  expect(pick).toBeNull();
  const named = (name: string) => pairs.find((pair: { name: string }) => pair.name === name);
  expect([named('Larch 155').turnRadius, named('No stiffness').turnRadius]).toEqual([
    'groove',
    'cosine rule',
  ]);
  expect(Math.abs(named('Larch 155').seconds - named('No stiffness').seconds)).toBeLessThan(0.02);
});

test('set does not pick a pair that fails the rule check, and says so', async () => {
  const long = await write('long.pair.json', { ...larch, name: 'Rowan 166', lengthMm: 1660 });
  const gates = ['--gates', '3', '--spacing', '10', '--offset', '2', '--turn', 'cosine'];
  const { pick, because, pairs, remarks } = await json('set', file, long, ...gates, '--category', 'men');
  expect(pick).toBe('Rowan 166');
  expect(because).toMatch(/Larch 155 is not picked: it fails the rule check for slalom \(.+\)\./);
  expect(pairs.find(({ name }: { name: string }) => name === 'Larch 155')).toMatchObject({
    rules: 'fails',
    seconds: expect.any(Number),
  });
  expect(remarks.join(' ')).toContain('only the rulebook in force');
});

test('set ranks many pairs on gates from a file, and says what was taken for granted', async () => {
  const birch = await write('birch.pair.json', { ...larch, name: 'Birch 193', discipline: 'GS' });
  const gates = await write('slalom.csv', 'gate,x,y\n1,1,10\n2,-1,20\n3,1,30\n4,-1,40\n');
  const reported = await run(['set', file, file, file, birch, file, '--course', gates, '--snow', '10']);
  expect(reported.code).toBe(0);
  expect(reported.err.split('\n')[3]).toBe('4 of 5: bending Birch 193 into the snow');
  expect(reported.out).toContain('Birch 193 is stated for giant slalom; these gates are taken as slalom.');
  expect(reported.out).toMatch(/^Birch 193 /m);
  expect(reported.out).toContain('Asked on a slope of 20° from 30 km/h at the start, running free.');
  expect(reported.out).toContain(
    'The slope and the speed are assumed; say otherwise with --slope and --speed or',
  );
  expect((await run(['set', '--help'])).out).toContain('30 km/h at the start on 20°');
});

test('set takes slope and speed from the file of gates, and an option over it', async () => {
  const request = async (...options: string[]) =>
    (await json('set', file, '--course', stating, '--turn', 'cosine', ...options)).asked;
  expect(await request()).toEqual({
    slopeDeg: 17,
    speedKmh: 34,
    speedKept: false,
    greatestEdgeDeg: 70,
    startSpeedKmh: 34,
    assumed: [],
  });
  expect(await request('--speed', '40', '--slope', '12')).toMatchObject({
    slopeDeg: 12,
    speedKmh: 40,
    speedKept: true,
    startSpeedKmh: 34,
  });
  expect(await request('--start-speed', '20')).toMatchObject({ speedKmh: 20, speedKept: false });
});

test.each([
  [
    ['--course', stating, '--speed', '20', '--start-speed', '20'],
    /^--start-speed: not together with --speed/,
  ],
  [['--course', stating, '--spacing', '10'], /^--spacing: not together with --course/],
  [['--spacing', '10'], /^--offset: is missing/],
])('set refuses %j', async (options, message) => {
  expect(await run(['set', file, ...options])).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringMatching(message),
  });
});
