import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { calc } from '../../main/calc/command-line.ts';
import { commands } from '../../main/calc/commands.ts';

/** Invented for these tests. */
const larch = {
  format: 'turnwright.pair',
  version: 1,
  name: 'Larch 155',
  discipline: 'SL',
  lengthMm: 1550,
  contactLengthMm: 1360,
  tipWidthMm: 117,
  waistWidthMm: 66,
  tailWidthMm: 104,
  camberMm: 8,
  massKg: 1.9,
  bending: { kind: 'uniform', newtonM2: 200 },
  torsion: { kind: 'uniform', newtonM2: 120 },
  demo: true,
};

let folder: string;
let file: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'turnwright-calc-'));
  file = await write('larch.pair.json', larch);
});

async function write(name: string, content: unknown): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

async function run(argv: string[], stdin = '') {
  let out = '';
  let err = '';
  const streams = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    stdin: async () => stdin,
  };
  return { code: await calc(argv, streams), out, err };
}

async function json(...argv: string[]) {
  const { code, out, err } = await run([...argv, '--json']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
}

describe('the command line', () => {
  test.each([
    [['nothing'], /command: "nothing" is not known; give one of shape, /],
    [['shape'], /shape: 0 files given; it takes 1/],
    [['shape', '/nowhere.pair.json'], /nowhere\.pair\.json: no such file/],
    [['shape', 'FILE', '--jsn'], /Unknown option '--jsn'; accepted options are --json/],
    [['shape', 'FILE', '--json', '--csv'], /--csv: not together with --json/],
    [['bend', 'FILE', '--load', '100,heavy'], /--load: "heavy" is not accepted; give 0 to 20000 N/],
    [['bend', 'FILE', '--span', '9000'], /--span: "9000" is not accepted; give 1 to 1360 mm/],
    [['vibrate', 'FILE', '--modes', '2.5'], /--modes: "2.5" is not accepted; give a whole number/],
    [['check', 'FILE', '--category', 'seniors'], /--category: "seniors" is not accepted; give one of men/],
    [['carve', 'FILE', '--snow', 'slush'], /--snow: "slush" is not accepted; give soft, groomed/],
    [['sweep', 'FILE', '--vary', 'waist=1:2:1'], /--vary: waist is no number of .*give lengthMm/],
    [['sweep', 'FILE', '--vary', 'waistWidthMm=2:1:1'], /--vary: "waistWidthMm=2:1:1" is not accepted/],
    [['identify', 'FILE'], /--contact-length: is missing/],
  ])('%j is an input fault told in one line', async (argv, message) => {
    const { code, out, err } = await run(argv.map(each => (each === 'FILE' ? file : each)));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err.trimEnd()).not.toContain('\n');
  });

  test('a faulty field is named with its file', async () => {
    const faulty = await write('faulty.pair.json', { ...larch, waistWidthMm: 130 });
    const { code, err } = await run(['shape', faulty]);
    expect(code).toBe(2);
    expect(err).toContain('faulty.pair.json: waistWidthMm');
    expect(err).toContain('130');
  });

  test('what the pair does not state is asked for, not guessed', async () => {
    const { bending: _, ...limp } = larch;
    const { code, err } = await run(['bend', await write('limp.pair.json', limp)]);
    expect(code).toBe(2);
    expect(err).toContain('limp.pair.json: this question needs a stiffness profile');
  });

  test('a file may come from standard input', async () => {
    const { code, out } = await run(['shape', '-', '--json'], JSON.stringify(larch));
    expect(code).toBe(0);
    expect(JSON.parse(out).name).toBe('Larch 155');
  });

  test('every command has help that lists its options', async () => {
    for (const [name, { options }] of Object.entries(commands)) {
      const { code, out } = await run([name, '--help']);
      expect(code).toBe(0);
      for (const option of Object.keys(options)) expect(out).toContain(`--${option}`);
    }
    expect((await run([])).out).toContain('turnwright COMMAND FILE');
  });

  test('--working adds the workings to the document and to the tables', async () => {
    expect((await json('shape', file)).workings).toBeUndefined();
    const { workings } = await json('shape', file, '--working');
    expect(workings[0]).toMatchObject({ key: 'shape.depth', source: expect.any(String) });
    expect((await run(['shape', file, '--working'])).out).toContain('Source:');
  });
});

describe('the contract', () => {
  test('shape', async () => {
    const result = await json('shape', file);
    expect(Object.keys(result)).toEqual([
      'name',
      'sidecutDepthMm',
      'radiusM',
      'radiusPlusMinusM',
      'circleRadiusM',
      'fittedRadiusM',
      'taperDeg',
      'waistFromTailMm',
      'local',
    ]);
    // L²/(2000 (S + T − 2W)): 1360² / (2000 · 89).
    expect(result.radiusM).toBeCloseTo(1360 ** 2 / (2000 * 89), 6);
    expect(result.sidecutDepthMm).toBeCloseTo((117 + 104) / 4 - 33, 9);
    expect(Object.keys(result.local[0])).toEqual(['fromTailMm', 'radiusM']);
    expect(result.local.at(-1).fromTailMm).toBe(1360);
  });

  test('bend', async () => {
    const result = await json('bend', file, '--load', '100,200', '--at', '680');
    // Uniform beam, load midway: k = 48 EI / L³ (any handbook).
    expect(result.springNPerMm).toBeCloseTo((48 * 200) / 1.36 ** 3 / 1000, 4);
    expect(result.curve.map((point: { loadN: number }) => point.loadN)).toEqual([100, 200]);
    expect(result.curve[1].deflectionMm).toBeCloseTo(200 / result.springNPerMm, 4);
    expect(Object.keys(result)).toEqual([
      'name',
      'springNPerMm',
      'flattenN',
      'firstTouchN',
      'curve',
      'shape',
    ]);
    expect(Object.keys(result.curve[0])).toEqual(['loadN', 'deflectionMm', 'flatTableDeflectionMm']);
    expect(Object.keys(result.shape[0])).toEqual(['fromTailMm', 'deflectionMm']);
  });

  test('vibrate', async () => {
    const { modes } = await json('vibrate', file, '--clamped', '--modes', '3');
    expect(modes).toHaveLength(3);
    expect(Object.keys(modes[0])).toEqual(['hz', 'kind']);
    expect(modes[1].hz).toBeGreaterThan(modes[0].hz);
  });

  test('identify finds a uniform beam again', async () => {
    const stiffness = 200;
    const length = 1.36;
    // Load and dial midway on supports at the ends: f = F L³ / (48 EI).
    const rows = [300, 680, 1000].map(at => {
      const a = at / 1000;
      const deflection = (100 * a ** 2 * (length - a) ** 2) / (3 * stiffness * length);
      return `${at},100,${at},${deflection * 1000}`;
    });
    const table = await write(
      'bench.csv',
      ['loadFromTailMm,loadN,dialFromTailMm,deflectionMm', ...rows].join('\n'),
    );
    const result = await json('identify', table, '--contact-length', '1360');
    expect(Object.keys(result)).toEqual(['stations', 'residualMm', 'enough']);
    for (const station of result.stations) {
      expect(Object.keys(station)).toEqual(['fromTailMm', 'newtonM2', 'low', 'high']);
      expect(Math.abs(station.newtonM2 / stiffness - 1)).toBeLessThan(0.1);
    }
    const bad = await write(
      'bad.csv',
      `${['loadFromTailMm,loadN,dialFromTailMm,deflectionMm', 'x,1,2,3'].join('\n')}`,
    );
    const { code, err } = await run(['identify', bad, '--contact-length', '1360']);
    expect(code).toBe(2);
    expect(err).toContain('bad.csv: line 2, loadFromTailMm: "x" is not a number');
  });

  test('run', async () => {
    const result = await json('run', file, '--slope', '12', '--edge', '35', '--turns', '4');
    expect(Object.keys(result)).toEqual(
      expect.arrayContaining([
        'seconds',
        'distanceM',
        'dropM',
        'endSpeedKmh',
        'maxLoadBodyWeights',
        'minHoldDeg',
        'skidSeconds',
        'energyErrorRatio',
        'samples',
      ]),
    );
    expect(Object.keys(result.samples[0])).toEqual([
      't',
      'xM',
      'yM',
      'speedKmh',
      'edgeDeg',
      'leanDeg',
      'loadN',
      'radiusM',
      'holdDeg',
    ]);
    expect(result.turnRadius).toBe('groove');
    expect(Math.abs(result.energyErrorRatio)).toBeLessThan(1e-6);
    expect(result.dropM).toBeCloseTo(result.samples.at(-1).yM * Math.sin((12 * Math.PI) / 180), 3);
  });

  test('carve', async () => {
    const result = await json('carve', file, '--edge', '30,50', '--load', '1000', '--snow', 'hard');
    expect(result.points).toHaveLength(2);
    const [point] = result.points;
    expect(Object.keys(point)).toEqual([
      'edgeDeg',
      'loadN',
      'hardnessNPerMm3',
      'cosineRadiusM',
      'turnRadiusM',
      'wholeRadiusM',
      'maxPenetrationMm',
      'twistTipDeg',
      'twistTailDeg',
      'iterations',
      'residual',
      'profile',
    ]);
    expect(Object.keys(point.profile[0])).toEqual([
      'fromTailMm',
      'lineLoadNPerM',
      'penetrationMm',
      'edgeDeg',
    ]);
    expect(point).toMatchObject({ edgeDeg: 30, loadN: 1000, hardnessNPerMm3: 10 });
    // R = R_sc cosθ with R_sc = 1360²/(2000 · 89) m.
    expect(point.cosineRadiusM).toBeCloseTo((1360 ** 2 / (2000 * 89)) * Math.cos(Math.PI / 6), 6);
    expect(point.residual).toBeLessThan(1e-8);
    // The line load carries the boot's force: trapezoids over the stations.
    const { profile } = point;
    let carried = 0;
    for (let i = 1; i < profile.length; i++) {
      const width = (profile[i].fromTailMm - profile[i - 1].fromTailMm) / 1000;
      carried += (width * (profile[i].lineLoadNPerM + profile[i - 1].lineLoadNPerM)) / 2;
    }
    expect(carried).toBeCloseTo(1000, 0);
  });

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
    expect(rows.map(row => row.split(',').slice(0, 2).join(' ')).slice(20, 22)).toEqual([
      '60 1400',
      '90 1300',
    ]);
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
    const rows = out
      .trimEnd()
      .split('\n')
      .map(line => JSON.parse(line));
    const { points } = await json('carve', file, '--edge', '30,50', '--load', '1000');
    expect(rows.map(row => row.turnRadiusM)).toEqual(
      points.map((p: { turnRadiusM: number }) => p.turnRadiusM),
    );
  });

  test('set', async () => {
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
      'verdict',
      'turnRadius',
    ]);
    expect(['Larch 155', 'Rowan 165']).toContain(result.pick);
    const birch = await write('birch.pair.json', { ...larch, name: 'Birch 193', discipline: 'GS' });
    const gates = await write('slalom.csv', 'gate,x,y\n1,1,10\n2,-1,20\n3,1,30\n4,-1,40\n');
    const many = ['set', file, file, file, birch, file, '--course', gates, '--snow', '10'];
    const told = await run(many);
    expect(told.code).toBe(0);
    expect(told.err.split('\n')[3]).toBe('4 of 5: bending Birch 193 into the snow');
    expect(told.out).toContain('Birch 193 is stated for giant slalom; these gates are taken as slalom.');
    expect(told.out.match(/^Birch 193 /gm)!.length).toBeGreaterThan(0);
    expect(told.out).toContain('Asked on a slope of 20° at 30 km/h kept all the way.');
    expect(told.out).toContain(
      'The slope and the speed are assumed; say otherwise with --slope and --speed or',
    );
    const stating = await write(
      'stating.csv',
      '# mine\ngate,x,y,slope,start speed\n1,1,10,17,34\n2,-1,20,,\n3,1,30,,\n',
    );
    const asked = async (...options: string[]) =>
      (await json('set', file, '--course', stating, '--snow', '10', ...options)).asked;
    expect(await asked()).toEqual({
      slopeDeg: 17,
      speedKmh: 34,
      speedKept: false,
      greatestEdgeDeg: 65,
      assumed: [],
    });
    expect(await asked('--speed', '40', '--slope', '12')).toMatchObject({
      slopeDeg: 12,
      speedKmh: 40,
      speedKept: true,
    });
    expect(await asked('--start-speed', '20')).toMatchObject({ speedKmh: 20, speedKept: false });
    expect(
      await run(['set', file, '--course', stating, '--speed', '20', '--start-speed', '20']),
    ).toMatchObject({
      code: 2,
      err: expect.stringContaining('--start-speed: not together with --speed'),
    });
    expect((await run(['set', '--help'])).out).toContain('30 km/h kept on 20°');
    const missing = await run(['set', file, '--spacing', '10']);
    expect(missing).toMatchObject({ code: 2, err: expect.stringContaining('--offset: is missing') });
  });

  test('check', async () => {
    const result = await json('check', file, '--category', 'U16 girls', '--discipline', 'sl');
    expect(result).toMatchObject({ discipline: 'SL', category: 'U16 girls', verdict: expect.any(String) });
    expect(Object.keys(result.items[0])).toEqual([
      'rule',
      'limit',
      'found',
      'plusMinus',
      'verdict',
      'status',
    ]);
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
});
