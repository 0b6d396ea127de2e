import { expect, test } from 'vitest';
import type { PairRun } from '../../../../renderer/answers/runs.ts';
import { inWords } from '../../../../renderer/state/index.ts';
import { MEASURED, measuredNear } from '../../../../renderer/views/slope/measured.ts';

const RAD = Math.PI / 180;

test('measured bands are the published means with their spread', () => {
  // Reid et al., Front. Sports Act. Living 2 (2020) 25 (seen): 65.7 ± 1.7°, 71.0 ± 1.9°; 3.96 ± 0.23 m, 4.94 ± 0.59 m.
  const published = [
    [65.7 * RAD, 1.7 * RAD],
    [3.96, 0.23],
    [71.0 * RAD, 1.9 * RAD],
    [4.94, 0.59],
  ] as const;
  const bands = MEASURED.slice(0, 2).flatMap(each => each.bands);
  expect(bands.map(band => band.trace)).toEqual(['edge', 'radius', 'edge', 'radius']);
  published.forEach(([mean, spread], i) => {
    expect(bands[i]!.low).toBeCloseTo(mean - spread, 9);
    expect(bands[i]!.high).toBeCloseTo(mean + spread, 9);
  });
});

const rhythmOn = (slopeDeg: number, spacing: number) =>
  ({
    plan: { ground: { kind: 'even', angle: slopeDeg * RAD }, programme: { kind: 'rhythm', spacing } },
    track: { y: Float64Array.of(0, 60), summary: { turns: 6 } },
  }) as unknown as PairRun;

test('they are shown near the slope and the gates they were measured on, and nowhere else', () => {
  const labels = (run: PairRun) => measuredNear(run).map(each => inWords(each.bands[0]!.label));
  expect(labels(rhythmOn(19, 10))).toEqual(['SL 10 m']);
  expect(labels(rhythmOn(18, 12.5))).toEqual(['SL 13 m']);
  expect(labels(rhythmOn(9, 10))).toEqual([]);
  expect(labels(rhythmOn(19, 16))).toEqual([]);
  expect(labels(rhythmOn(12, 25))).toEqual(['GS insoles']);
});

test('a run without gates is read by how far down its turns are apart', () => {
  const run = rhythmOn(19, 0);
  const linked = { ...run, plan: { ...run.plan, programme: { kind: 'linked' } } } as unknown as PairRun;
  expect(measuredNear(linked).map(each => inWords(each.bands[0]!.label))).toEqual(['SL 10 m']);
});
