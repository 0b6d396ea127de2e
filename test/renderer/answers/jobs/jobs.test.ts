import { describe, expect, it } from 'vitest';
import { tableRadius } from '../../../../core/carve/index.ts';
import { FieldError } from '../../../../core/fault/index.ts';
import { skiOf } from '../../../../core/pair/index.ts';
import { jobs } from '../../../../renderer/answers/jobs/jobs.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';

const DEGREE = Math.PI / 180;
const larch = demoPairs[0]!;
const conditions = [30, 40, 50].map(degrees => ({
  edgeAngle: degrees * DEGREE,
  load: 1200,
  hardness: 1e9,
  fore: 0,
}));

describe('jobs', () => {
  it('solve grooves one after another, with progress, as plain data', () => {
    const shares: number[] = [];
    const answers = structuredClone(jobs.groove({ pair: larch, conditions }, share => shares.push(share)));
    expect(shares).toEqual([1 / 3, 2 / 3, 1]);
    const radii = answers.map(answer => (answer.ok ? answer.turnRadius : Number.NaN));
    expect(radii[0]!).toBeGreaterThan(radii[1]!);
    expect(radii[1]!).toBeGreaterThan(radii[2]!);
  });

  it('answer the same whatever was asked before', () => {
    const at = (edge: number) =>
      jobs.equilibria({
        pairs: [larch, demoPairs[2]!],
        conditions: { edgeAngle: edge * DEGREE, load: 1000, hardness: 1e9, fore: 0 },
      });
    const first = at(45);
    at(62);
    const again = at(45);
    for (const pair of [0, 1]) {
      const [one, other] = [first[pair]!, again[pair]!];
      expect(one.ok && other.ok && one.turnRadius / other.turnRadius).toBeCloseTo(1, 6);
    }
  });

  it('make a table that answers between its points', () => {
    const shares: number[] = [];
    const input = { pair: larch, hardness: 1e10, fore: 0.02 };
    const table = structuredClone(jobs.radiusTable(input, share => shares.push(share)));
    if ('ok' in table) throw new Error(JSON.stringify(table.reason));
    expect(shares.at(-1)).toBe(1);
    const [direct] = jobs.equilibria({
      pairs: [larch],
      conditions: { edgeAngle: 47 * DEGREE, load: 1100, hardness: 1e10, fore: 0.02 },
    });
    const radius = tableRadius(table, 47 * DEGREE, 1100);
    expect(direct!.ok && radius / direct!.turnRadius).toBeCloseTo(1, 2);
  });

  it('bend: modes, the flat table, the large bend and the profile, each known by its id', () => {
    const ski = skiOf(larch);
    const one = { id: 'x', ski };
    const { contactLength: length, bootCentre: at } = ski;
    const setup = { length, rear: 0, front: length, at, load: 300 };
    const [modes] = structuredClone(jobs.modes({ skis: [one], clamped: true }));
    expect(modes).toMatchObject({ id: 'x', clamped: true, needs: null });
    expect(modes!.modes.length).toBeGreaterThan(2);
    const [curve] = structuredClone(jobs.tableCurves({ skis: [{ ...one, setup }], most: 1000 }));
    expect(curve!.id).toBe('x');
    expect(curve!.loads.at(-1)).toBe(1000);
    for (let i = 1; i < curve!.loads.length; i++)
      expect(curve!.deflections[i]!).toBeGreaterThanOrEqual(curve!.deflections[i - 1]!);
    expect(jobs.largeBend({ ...one, setup })).toMatchObject({ ok: true, id: 'x', beyondSmall: false });
    const few = jobs.identify({ id: 'x', readings: [], length, uncertainty: 1e-4 });
    expect(few).toMatchObject({ ok: false, id: 'x', fault: { field: 'readings', found: 0 } });
  });

  it('refuse a ski that cannot be bent', () => {
    const { bending: _, ...bare } = larch;
    expect(() => jobs.groove({ pair: bare, conditions }, () => {})).toThrow(FieldError);
  });
});
