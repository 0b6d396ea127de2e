import { describe, expect, test } from 'vitest';
import { file, json, run, write } from './drive.ts';

describe('names, nesting and units of', () => {
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
    // (u/R)² = (2u_L/L)² + (u_S² + u_T² + 4u_W²)/(S + T − 2W)², 1 mm on the length, 0.25 mm on the widths.
    const relative = Math.sqrt((2 / 1360) ** 2 + (6 * 0.25 ** 2) / 89 ** 2);
    expect(result.radiusPlusMinusM).toBeCloseTo(result.radiusM * relative, 6);
    expect(result.taperDeg).toBeCloseTo((Math.atan((117 - 104) / 2 / 1360) * 180) / Math.PI, 6);
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
    // 48 EI h / L³ to first touch; pressed on one point the two halves keep a gap of at most 0.0741 h.
    expect(result.firstTouchN).toBeCloseTo((48 * 200 * 0.008) / 1.36 ** 3, 4);
    expect(result.flattenN).toBeNull();
    const { out } = await run(['bend', file, '--at', '680']);
    expect(out).toContain('a gap of 0.59 mm stays');
  });

  test('the workings of bend are of the bench asked about', async () => {
    const setup = ['--span', '1000', '--at', '700', '--load', '80,240'];
    const { springNPerMm, curve, workings } = await json('bend', file, ...setup, '--working');
    const spring = workings.find(({ key }: { key: string }) => key === 'flex.spring');
    const [force, deflection] = spring.inputs;
    expect(force.value).toBe(240);
    expect(deflection.value * 1e3).toBeCloseTo(curve[1].deflectionMm, 6);
    expect(spring.result.value / 1e3).toBeCloseTo(springNPerMm, 6);
    expect((await run(['bend', file, '--working'])).out).toContain(
      'F = 300 N: load at the boot centre, supports at the contact points',
    );
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
    expect(err).toContain('bad.csv: line 2, loadFromTailMm: "x" is not accepted; accepted is a number');
  });

  test('rhythm', async () => {
    const found = await json(
      'rhythm',
      file,
      '--spacing',
      '11',
      '--offset',
      '3',
      '--slope',
      '16',
      '--turn',
      'cosine',
    );
    expect(Object.keys(found)).toEqual(
      expect.arrayContaining([
        'name',
        'secondsPerGate',
        'meanSpeedKmh',
        'peakEdgeDeg',
        'peakLeanDeg',
        'peakLoadBodyWeights',
        'leastRadiusM',
        'skisAcrossM',
        'massAcrossM',
        'shares',
        'worth',
        'samples',
      ]),
    );
    expect(found.turnRadius).toBe('cosine rule');
    expect(found.secondsPerGate).toBeGreaterThan(0.5);
    expect(found.secondsPerGate).toBeLessThan(1.2);
    expect(found.skisAcrossM).toBeCloseTo(1.8, 3);
    expect(found.massAcrossM).toBeLessThan(found.skisAcrossM);
    expect(found.shares.scrape + found.shares.friction + found.shares.drag).toBeCloseTo(1, 6);
    const worth = (input: string) =>
      found.worth.find((row: { input: string }) => row.input === input).seconds;
    expect(worth('clearance')).toBeLessThan(0);
    expect(worth('pushMost')).toBeLessThan(0);
    expect(Object.keys(found.samples[0])).toEqual([
      't',
      'xM',
      'yM',
      'massXM',
      'massYM',
      'speedKmh',
      'edgeDeg',
      'leanDeg',
      'legM',
      'loadN',
      'radiusM',
      'driftDeg',
    ]);
  });

  test('rhythm names what cannot be kept', async () => {
    const legs = await run([
      'rhythm',
      file,
      '--spacing',
      '10',
      '--offset',
      '3',
      '--leg-min',
      '1',
      '--leg-max',
      '0.9',
    ]);
    expect(legs.code).toBe(2);
    expect(legs.err).toContain('legLongest: 0.90');
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
      'massXM',
      'massYM',
      'legM',
      'slipDeg',
    ]);
    expect(result.turnRadius).toBe('groove');
    const { workings } = await json('run', file, '--turns', '2', '--working');
    const keys = workings.map(({ key }: { key: string }) => key);
    expect(keys).toEqual(expect.arrayContaining(['shape.radius', 'run.radius', 'run.load', 'run.hold']));
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
      'reboundMm',
      'cosineRadiusM',
      'turnRadiusM',
      'rearRadiusM',
      'frontRadiusM',
      'rearTooShort',
      'frontTooShort',
      'wholeRadiusM',
      'maxPenetrationMm',
      'twistTipDeg',
      'twistTailDeg',
      'iterations',
      'residual',
      'pressureFromMidlineMm',
      'pressureOverBaseMm',
      'bootFreeAngulationDeg',
      'profile',
    ]);
    // The push passes the foot at the pressure's centre; the pair states no heights, so 93 mm are taken.
    expect(Math.tan((point.bootFreeAngulationDeg * Math.PI) / 180)).toBeCloseTo(
      point.pressureFromMidlineMm / (93 - point.pressureOverBaseMm),
      6,
    );
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
    expect(point.wholeRadiusM).toBe(point.turnRadiusM);
    expect(point.reboundMm).toBe(0.2);
    const { workings } = await json('carve', file, '--edge', '30', '--working');
    expect(workings.map(({ key }: { key: string }) => key)).toEqual([
      'carve.cosineRadius',
      'carve.turnRadius',
      'carve.rearRadius',
      'carve.frontRadius',
      'carve.penetration',
      'carve.twistTip',
      'carve.twistTail',
      'boot.footBed',
      'boot.freeAngulation',
      'boot.solvedFreeAngulation',
    ]);
    // The line load carries the boot's force: trapezoids over the stations.
    const { profile } = point;
    let carried = 0;
    for (let i = 1; i < profile.length; i++) {
      const width = (profile[i].fromTailMm - profile[i - 1].fromTailMm) / 1000;
      carried += (width * (profile[i].lineLoadNPerM + profile[i - 1].lineLoadNPerM)) / 2;
    }
    expect(carried).toBeCloseTo(1000, 0);
  });

  test('carve with a rebound of its own, which the working names', async () => {
    const request = ['carve', file, '--edge', '50', '--load', '1200', '--snow', 'groomed'];
    const [usual] = (await json(...request)).points;
    const result = await json(...request, '--rebound', '0.8', '--working');
    const [point] = result.points;
    expect(point.reboundMm).toBe(0.8);
    expect(point.turnRadiusM).toBeLessThan(0.995 * usual.turnRadiusM);
    const [, solved] = result.workings;
    expect(solved.key).toBe('carve.turnRadius');
    expect(solved.note).toContain('a rebound of 0.80 mm');
    expect((await json(...request, '--rebound', '0.08cm')).points[0].turnRadiusM).toBe(point.turnRadiusM);
  });
});
