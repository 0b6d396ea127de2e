import { describe, expect, it } from 'vitest';
import { type Compared, differences, tellable } from '../../../renderer/answers/differences.ts';
import { numberRows } from '../../../renderer/views/compare/numbers.ts';

const known = (value: number, plusMinus: number) => ({ value, plusMinus });
const DEGREE = Math.PI / 180;

const larch: Compared = {
  name: 'Larch 155',
  length: known(1.55, 0.001),
  waist: known(0.066, 0.00025),
  sidecutRadius: known(12.08, 0.1),
  turnRadius: { ...known(7.1, 0.06), solved: true },
  centre: known(3400, 102),
  shovel: known(2100, 63),
  rear: known(2300, 69),
  mass: known(1.9, 0.02),
  sideAngle: known(87 * DEGREE, 0.1 * DEGREE),
  baseBevel: known(0.5 * DEGREE, 0.1 * DEGREE),
  fastest: known(12, 0.1),
  edgeAtFastest: 40 * DEGREE,
  verdict: 'passes',
  doubts: [],
};
const birch: Compared = {
  ...larch,
  name: 'Birch 193',
  length: known(1.93, 0.001),
  waist: known(0.0662, 0.00025),
  sidecutRadius: known(30.5, 0.6),
  centre: known(5000, 150),
  mass: null,
  verdict: 'too close to call',
  doubts: ['Least radius'],
};
const metric = { system: 'metric', edgeDeg: 50, turnRadius: 10 } as const;
const of = (topic: string, reported = differences(larch, birch, metric)) =>
  reported.find(each => each.topic === topic)!;

describe('differences that matter', () => {
  it('are told in words with numbers, from the first pair', () => {
    expect(of('Sidecut radius').text).toBe(
      'Larch 155 turns 18.4\u00a0m tighter by its sidecut (12.08 ± 0.10\u00a0m against 30.5 ± 0.6\u00a0m).',
    );
    expect(of('Under the boot').text).toMatch(/^Larch 155 is 32 % softer under the boot \(/);
    expect(of('Length').text).toMatch(/^Larch 155 is 38\.0\u00a0cm shorter \(/);
  });

  it('tell a held speed with the edge it takes', () => {
    const quick = { ...birch, fastest: known(16, 0.2), edgeAtFastest: 72 * DEGREE };
    expect(of('A 10.0\u00a0m turn', differences(quick, larch, metric)).text).toMatch(
      /^Birch 193 holds a 10\.0\sm turn to a speed 14\.4\skm\/h higher, on 72° of edge instead of 40° \(/u,
    );
  });

  it('say where and what follows, with angles in one pair of brackets', () => {
    const other = {
      ...larch,
      name: 'Hazel 130',
      waist: known(0.065, 0.00025),
      sideAngle: known(88 * DEGREE, 0.1 * DEGREE),
    };
    const reported = differences(
      other,
      { ...larch, turnRadius: { ...known(9, 0.06), solved: true } },
      metric,
    );
    expect(of('Waist', reported).text).toMatch(
      /^Hazel 130 is 1\.0\smm narrower at the waist, so it takes less to tip \(/u,
    );
    expect(of('Turn at 50°', reported).text).toMatch(
      /^Hazel 130 carves 1\.90\sm tighter when tilted to 50° and bent/u,
    );
    expect(of('Side edge', reported).text).toBe(
      'Hazel 130 is 1.00° blunter at the side edge (88.00 ± 0.10° against 87.00 ± 0.10°).',
    );
  });

  it('turn round with the pairs', () => {
    const reported = differences(birch, larch, metric);
    expect(of('Sidecut radius', reported).text).toContain('Birch 193 turns 18.4\u00a0m wider');
    expect(of('Under the boot', reported).text).toContain('47 % stiffer');
  });

  it('are none within the measuring uncertainty, and say so', () => {
    const waist = of('Waist');
    expect(waist.kind).toBe('none');
    expect(waist.text).toBe(
      'Waist: no difference that could be measured (66.0 ± 0.3\u00a0mm and 66.2 ± 0.3\u00a0mm).',
    );
    expect(of('Base bevel').text).toMatch(/^Base bevel: the same/);
  });

  it('are unknown where a file does not tell, naming the pair', () => {
    expect(of('Mass')).toMatchObject({ kind: 'unknown', text: 'Mass: cannot be told for Birch 193.' });
  });

  it('do not set a bent ski against the cosine rule', () => {
    const rigid = { ...birch, turnRadius: { ...known(19, 0.3), solved: false } };
    expect(of('Turn at 50°', differences(larch, rigid, metric)).kind).toBe('unknown');
  });

  it('name the rules in doubt', () => {
    expect(of('Rules').text).toContain('Birch 193: too close to call (Least radius).');
  });

  it('put what matters first and leave nothing out', () => {
    const kinds = differences(larch, birch, metric).map(each => each.kind);
    expect(kinds).toEqual(kinds.toSorted((a, b) => rank(a) - rank(b)));
    expect(kinds).toHaveLength(12);
  });

  it('take two standard uncertainties of the difference as the border', () => {
    expect(tellable(known(10, 0.3), known(11.41, 0.4))).toBe(true);
    expect(tellable(known(10, 0.3), known(10.99, 0.4))).toBe(false);
  });
});

const rank = (kind: string) => ['matters', 'none', 'unknown'].indexOf(kind);

describe('the table for a file', () => {
  it('holds value and uncertainty of every pair in the unit named', () => {
    const rows = numberRows([larch, birch], 'metric');
    expect(rows[0]).toEqual(['quantity', 'unit', 'Larch 155', 'Larch 155 ±', 'Birch 193', 'Birch 193 ±']);
    expect(rows.find(row => row[0] === 'Waist')).toEqual(['Waist', 'mm', '66', '0.25', '66.2', '0.25']);
    expect(rows.find(row => row[0] === 'Mass of one ski')!.slice(4)).toEqual(['', '']);
  });
});
