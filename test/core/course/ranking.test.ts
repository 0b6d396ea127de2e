import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chooseEdge,
  edgeForRadius,
  fillCourseConditions,
  gateReport,
  lineThroughGates,
  rankPairs,
  rhythmicSet,
} from '../../../core/course/index.ts';
import { sayAll } from '../../../core/language/index.ts';
import { cosineTurn } from '../../../core/run/index.ts';

const rad = Math.PI / 180;
const pairOf = (radius: number) => ({ name: `${radius} m`, turn: cosineTurn(radius), baseBevel: 0 });

describe('edgeForRadius', () => {
  it('finds the radius to a billionth whatever way it closes, in no more looks than halving takes', () => {
    const shapes: readonly ((edge: number) => number)[] = [
      edge => Math.cos(edge),
      edge => Math.cos(edge) ** 6,
      edge => Math.cos(edge) ** 0.2,
      // A corner, and nearly flat before it closes.
      edge => (edge < 1 ? 1 - 1e-4 * edge : Math.max(0, 0.9999 - (edge - 1) * 1.7)),
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        fc.double({ min: 0.01, max: 1.5, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        (shape, edge, sidecut) => {
          let looks = 0;
          const turn = {
            radius: (at: number) => {
              looks++;
              return sidecut * shape(at);
            },
          };
          const found = edgeForRadius(turn, sidecut * shape(edge), 900)!;
          expect(Math.abs(turn.radius(found) / (sidecut * shape(edge)) - 1)).toBeLessThan(1e-9);
          expect(looks).toBeLessThan(45);
        },
      ),
    );
  });

  it('turns the radius of a ski round', () => {
    expect(edgeForRadius(cosineTurn(13), 6.5, 900)).toBeCloseTo(Math.PI / 3, 8);
    expect(edgeForRadius(cosineTurn(13), 20, 900)).toBe(0);
    expect(edgeForRadius(cosineTurn(30), 0.2, 900)).toBeNull();
  });

  it('asks a ski that turns tighter under load for less edge', () => {
    const bending = { radius: (edge: number, load: number) => 13 * Math.cos(edge) * (1 - load / 10_000) };
    const [light, heavy] = [500, 1500].map(load => edgeForRadius(bending, 8, load)!);
    expect(heavy).toBeLessThan(light);
    expect(bending.radius(heavy, 1500)).toBeCloseTo(8, 8);
  });
});

describe('chooseEdge', () => {
  const level = fillCourseConditions({ slope: 0 });

  it('carves where the needed edge holds', () => {
    const choice = chooseEdge(pairOf(13), 8, 5, 0, 1, 0.5, level);
    expect(choice.mode).toBe('carves');
    expect(choice.edge).toBeCloseTo(Math.acos(8 / 13), 8);
    expect(choice.hold).toBeCloseTo(choice.edge - Math.atan(25 / (9.81 * 8)), 8);
  });

  it('finds the least holding edge on level ground, sinθ = v²/(g R_sc)', () => {
    const choice = chooseEdge(pairOf(13), 12.9, 9, 0, 1, 0.5, level);
    expect(choice.mode).toBe('tight arcs');
    expect(Math.sin(choice.edge)).toBeCloseTo(81 / (9.81 * 13), 3);
    expect(choice.hold).toBeCloseTo(0, 4);
  });

  it('drifts above the ceiling and where the line asks for more edge than there is', () => {
    const fast = chooseEdge(pairOf(13), 20, 14, 0, 1, 0.5, level);
    expect(fast).toMatchObject({ mode: 'drifts', neededEdge: 0 });
    expect(fast.hold).toBeLessThan(0);
    expect(fast.drift).toBeGreaterThan(0);
    const tight = chooseEdge(pairOf(30), 7, 7, 0, 1, 0.5, level);
    expect(tight.mode).toBe('drifts');
    expect(tight.neededEdge).toBeGreaterThan(level.greatestEdge);
  });
});

describe('gateReport', () => {
  it('keeps the energy book: drop = speed + friction + drag, without drifting', () => {
    const gates = rhythmicSet(10, 16, 1);
    const line = lineThroughGates(gates, { step: 0.05 });
    const still = { friction: 0, dragArea: 0, startSpeed: 4, slope: 5 * rad };
    const report = gateReport(pairOf(60), line, gates, still);
    expect(report.driftWork).toBe(0);
    const drop = 9.81 * Math.sin(5 * rad) * (line.y[line.y.length - 1] - line.y[0]);
    expect(report.endSpeed ** 2).toBeCloseTo(16 + 2 * drop, 8);
  });

  it('tends to one answer as the steps shrink', () => {
    const gates = rhythmicSet(20, 10, 3);
    const seconds = [0.5, 0.1].map(
      step => gateReport(pairOf(13), lineThroughGates(gates, { step }), gates, { startSpeed: 7 }).seconds,
    );
    expect(seconds[0] / seconds[1]).toBeCloseTo(1, 2);
  });
});

describe('rankPairs', () => {
  const gates = rhythmicSet(24, 10, 3);

  it('does not depend on the order the pairs are given in', () => {
    const radii = [12, 13, 14, 17, 20, 30];
    const names = (list: number[]) => rankPairs(list.map(pairOf), gates).pairs.map(entry => entry.name);
    expect(names([...radii].reverse())).toEqual(names(radii));
  });

  it('names small changes that would flip a close pick', () => {
    const ranking = rankPairs([pairOf(13), pairOf(13.2)], gates, { holdSpeed: true, startSpeed: 9 });
    expect(ranking.sure).toBe('close');
    expect(ranking.flips.length).toBeGreaterThan(0);
    expect(sayAll(ranking.because)).toContain('Close:');
    for (const flip of ranking.flips) expect(flip.pick).not.toBe(ranking.pick);
  });

  it('says so when nothing compared tells two pairs apart', () => {
    const ranking = rankPairs([pairOf(13), { ...pairOf(13), name: 'twin' }], gates);
    expect(ranking.pick).toBe('13 m');
    expect(sayAll(ranking.because)).toContain('level with it in everything compared');
  });

  it('says in words when drifting leaves no speed to keep', () => {
    const { pairs, because } = rankPairs([pairOf(13), pairOf(30)], gates, { holdSpeed: true, startSpeed: 9 });
    const [best, last] = pairs;
    expect(last.cost - best.cost).toBeGreaterThan(best.report.seconds / 2);
    expect(sayAll(because)).toContain('30 m drifts at');
    expect(sayAll(because)).toContain(
      'could not keep this speed: drifting takes more than half of what the slope gives',
    );
  });

  it('tells two pairs of one name apart', () => {
    const twins = [pairOf(30), { ...pairOf(13), name: '30 m' }];
    const ranking = rankPairs(twins, gates, { holdSpeed: true, startSpeed: 9 });
    expect(ranking.pairs.map(entry => entry.index)).toEqual([1, 0]);
    expect(ranking.sure).toBe('clear');
  });

  it('answers for one pair, and not for none', () => {
    expect(rankPairs([pairOf(13)], gates).sure).toBe('only one pair');
    expect(() => rankPairs([], gates)).toThrow(/pairs/);
  });

  it('names a condition out of range', () => {
    expect(() => rankPairs([pairOf(13)], gates, { mass: -1 })).toThrow(
      expect.objectContaining({ field: 'mass' }),
    );
  });
});
