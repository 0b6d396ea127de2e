import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnEdges, linkedTurns, readEdges } from '../../../core/run/index.ts';
import { told } from '../fault/told.ts';

const RAD = Math.PI / 180;

describe('linked turns', () => {
  it('alternate sides, reach the peak in the middle and change edge each half period', () => {
    for (const shape of ['sine', 'trapezoid'] as const) {
      const p = linkedTurns({ peakEdge: 1, period: 4, turns: 3, shape, first: 'left' });
      expect(p.edge(1)).toBeCloseTo(-1, 12);
      expect(p.edge(3)).toBeCloseTo(1, 12);
      expect(p.edge(5)).toBeCloseTo(-1, 12);
      expect(p.changeovers).toEqual([0, 2, 4, 6]);
      for (const at of p.changeovers) expect(p.edge(at)).toBeCloseTo(0, 12);
    }
  });

  it('name what is not accepted', () => {
    expect(() => linkedTurns({ peakEdge: 2, period: 3, turns: 1 })).toThrow(
      expect.objectContaining({ field: 'peakEdge' }),
    );
    expect(() => linkedTurns({ peakEdge: 1, period: 0, turns: 1 })).toThrow(
      expect.objectContaining({ field: 'period' }),
    );
    expect(() => linkedTurns({ peakEdge: 1, period: 3, turns: 1.5 })).toThrow(
      expect.objectContaining({ field: 'turns' }),
    );
  });
});

describe('drawn edges', () => {
  it('pass through the points, never beyond them, and know where they change side', () => {
    const point = fc.integer({ min: -140, max: 140 }).map(n => n / 100);
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 12 }), edges => {
        const at = edges.map((_, i) => i);
        const p = drawnEdges(at, edges);
        for (const [i, e] of edges.entries()) expect(p.edge(i)).toBeCloseTo(e, 12);
        for (let t = 0; t < edges.length - 1; t += 0.07) {
          const k = Math.floor(t);
          expect(p.edge(t)).toBeGreaterThanOrEqual(Math.min(edges[k], edges[k + 1]) - 1e-12);
          expect(p.edge(t)).toBeLessThanOrEqual(Math.max(edges[k], edges[k + 1]) + 1e-12);
        }
        for (const c of p.changeovers) expect(p.edge(c)).toBeCloseTo(0, 9);
      }),
    );
    expect(drawnEdges([0, 1, 2, 3, 4], [1, 0, 0, -1, 1]).changeovers).toHaveLength(3);
  });

  it('are read from time and degrees', () => {
    const p = readEdges('time,edge\n0,0\n1,60\n2,-60\n');
    expect(p.edge(1)).toBeCloseTo(60 * RAD, 12);
    expect(p.end).toBe(2);
    expect(told(() => readEdges('0,0\n1,95\n'))).toEqual([
      'line 2, edge: 95.0° is not accepted; accepted is a number above −90.0 and below 90.0°',
    ]);
    // The line of the file, not the number of the point.
    expect(told(() => readEdges('time,edge\n\n0,0\n1,95\n'))[0]).toMatch(/^line 4, edge: 95\.0°/);
    expect(told(() => readEdges('t,edge\n-1,0\n1,20\n'))[0]).toMatch(/^line 2, time: -1 /);
    expect(told(() => readEdges('0,0\n1,x\n'))[0]).toMatch(/^line 2, edge angle \(deg\): "x"/);
  });
});
