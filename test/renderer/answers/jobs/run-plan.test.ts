import { expect, test } from 'vitest';
import { inSi, USUAL } from '../../../../core/conditions/index.ts';
import { cosineTurn } from '../../../../core/run/index.ts';
import { PLAN_FIELDS, type RunPlan, runPlan } from '../../../../renderer/answers/jobs/run-plan.ts';
import { phaseWords, rowAt, skidWords, stretchesOf } from '../../../../renderer/views/slope/skids.ts';
import { TRACES } from '../../../../renderer/views/slope/trace-list.ts';
import { trackRows } from '../../../../renderer/views/slope/track-csv.ts';

const RAD = Math.PI / 180;
const plan: RunPlan = {
  ...inSi(USUAL, PLAN_FIELDS),
  turn: { sidecutRadius: 13 },
  ground: { kind: 'even', angle: 12 * RAD },
  programme: { kind: 'linked', peakEdge: 40 * RAD, period: 3, turns: 2, shape: 'sine' },
  mass: 75,
  friction: 0.05,
  dragArea: 0.4,
  airDensity: 1.1,
  startSpeed: 6,
  baseBevel: 0,
  wallStrength: Number.POSITIVE_INFINITY,
  contactLength: 1.4,
  legShortest: 0.65,
  legLongest: 1,
};

function trackOf(change: Partial<RunPlan> = {}) {
  const answer = runPlan({ ...plan, ...change });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer.track;
}

test('a run lasts its programme', () => {
  expect(trackOf().summary.seconds).toBeCloseTo(3, 6);
});

test('a draft of a run is found as well, and begins the next', () => {
  const first = runPlan(plan, undefined, { draft: true });
  if (!first.ok) throw new Error(JSON.stringify(first.problem));
  expect(first.begun).toMatchObject({ draft: true });
  const next = runPlan({ ...plan, startSpeed: 6.2 }, first.begun, { draft: true });
  if (!next.ok) throw new Error(JSON.stringify(next.problem));
  expect(next.track.summary.endSpeed / trackOf({ startSpeed: 6.2 }).summary.endSpeed).toBeCloseTo(1, 2);
});

test('plans of every kind are followed', () => {
  for (const change of [
    { ground: { kind: 'roller' } },
    { ground: { kind: 'steepening' } },
    { ground: { kind: 'file', name: 'hill.csv', text: 'distance,height\n0,0\n100,-20\n300,-70' } },
    { programme: { kind: 'drawn', at: [0, 1, 2, 3], edges: [0, 0.6, 0, -0.6] } },
    { programme: { kind: 'file', name: 'angles.csv', text: '0,0\n1,40\n2,0\n3,-40' } },
    { programme: { kind: 'banked', traverse: 1, turns: 3 }, startSpeed: 5, friction: 0.03 },
  ] as Partial<RunPlan>[]) {
    expect(trackOf(change).t.length, JSON.stringify(change)).toBeGreaterThan(50);
  }
});

test('a faulty file is told with its line, not thrown', () => {
  const answer = runPlan({ ...plan, ground: { kind: 'file', name: 'hill.csv', text: '0,0\n10,x' } });
  expect(answer).toMatchObject({ ok: false, problem: { where: { line: 2 }, field: 'height (m)' } });
});

test('banked turns too fast for the ski say so', () => {
  const answer = runPlan({ ...plan, programme: { kind: 'banked', traverse: 1, turns: 3 }, startSpeed: 40 });
  expect(answer).toMatchObject({
    ok: false,
    problem: { key: 'run.noSuchRun', values: { ease: { key: 'run.easeBanked' } } },
  });
});

test('skids are found and told in words', () => {
  const fast = trackOf({ startSpeed: 16, programme: { ...plan.programme, peakEdge: 50 * RAD } as never });
  const found = stretchesOf(fast);
  expect(found.length).toBeGreaterThan(0);
  const total = found.reduce((sum, { from, to }) => sum + to - from, 0);
  expect(total).toBeCloseTo(fast.summary.skidSeconds, 0);
  const middle = rowAt(fast, (found[0]!.from + found[0]!.to) / 2);
  expect(phaseWords(fast, middle)).toBe('slides: the edge has let go');
  expect(skidWords(found)).toMatch(/^The edge lets go at \d/);
  expect(skidWords([])).toBe('It carves all the way.');
});

test('the traces have one value a row', () => {
  const track = trackOf();
  for (const trace of TRACES) expect(trace.values(track)).toHaveLength(track.t.length);
});

/** Twists by two degrees at the tip and one at the tail, whatever the load. */
const TWISTING = { ...cosineTurn(12), twistTip: () => Math.PI / 90, twistTail: () => Math.PI / 180 };

test('the table has a heading and a value in every column', () => {
  const [heading, ...rows] = trackRows([{ name: 'Larch', track: trackOf(), turn: TWISTING }]);
  expect(rows.length).toBeGreaterThan(100);
  for (const row of rows) expect(row).toHaveLength(heading!.length);
  expect(rows[0]![0]).toBe('Larch');
  expect(rows[0]![heading!.indexOf('speed of the skier (km/h)')]).toBeCloseTo(21.6, 6);
  const at = (name: string) => Number(rows[80]![heading!.indexOf(name)]);
  expect(at('grip to spare at the tip (deg)')).toBeCloseTo(at('grip to spare (deg)') - 2, 4);
  expect(at('grip to spare at the tail (deg)')).toBeCloseTo(at('grip to spare (deg)') - 1, 4);
});

test('every column of the table names its unit, but for words', () => {
  const [heading] = trackRows([{ name: 'Larch', track: trackOf(), turn: TWISTING }]);
  const bare = heading!.filter(each => !/\((s|m|deg|km\/h|N|J|body weights)\)$/.test(String(each)));
  expect(bare).toEqual(['pair', 'state']);
});
