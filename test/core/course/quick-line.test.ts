import { describe, expect, it } from 'vitest';
import { gateReport, lineThroughGates, quickLine, rhythmicSet } from '../../../core/course/index.ts';
import { say } from '../../../core/language/index.ts';
import { cosineTurn } from '../../../core/run/index.ts';

const rad = Math.PI / 180;
const pair = { name: '30 m', turn: cosineTurn(30), baseBevel: 0.5 * rad };
const gates = rhythmicSet(8, 25, 7);
const conditions = { slope: 16 * rad, startSpeed: 15 };

function solved(question: Parameters<typeof quickLine>[0]) {
  const line = quickLine(question);
  if (!line.ok) throw new Error(JSON.stringify(line.reason));
  return line;
}

describe('quickLine', () => {
  const line = solved({ gates, turn: pair.turn, baseBevel: pair.baseBevel, conditions });

  it('is quicker than the drawn line', () => {
    const drawn = gateReport(pair, lineThroughGates(gates), gates, conditions);
    expect(line.seconds).toBeLessThan(drawn.seconds);
    expect(line.heldBackBy).toContain('gates');
  });

  it('passes every pole outside at the clearance', () => {
    gates.forEach((gate, g) => {
      let nearest = Number.POSITIVE_INFINITY;
      for (let i = 0; i < line.s.length; i++) {
        nearest = Math.min(nearest, Math.hypot(line.x[i] - gate.x, line.y[i] - gate.y));
      }
      expect(nearest).toBeGreaterThan(0.39);
      expect(Math.sign(line.x[line.gateSamples[g]] - gate.x)).toBe(-line.turns[g]);
    });
  });

  it('keeps the least radius, the hold and the edge rate, read off the finished line', () => {
    const leastRadius = 30 * Math.cos(65 * rad);
    for (let i = 1; i < line.s.length; i++) {
      expect(1 / Math.abs(line.curvature[i])).toBeGreaterThan(0.98 * leastRadius);
      expect(Math.abs(line.lean[i])).toBeLessThan(65 * rad);
      const seconds = (2 * (line.s[i] - line.s[i - 1])) / (line.speed[i] + line.speed[i - 1]);
      expect(Math.abs(line.lean[i] - line.lean[i - 1]) / seconds).toBeLessThan(1.02 * 300 * rad);
    }
  });

  it('has heading, curvature and place that belong together', () => {
    for (let i = 1; i < line.s.length; i++) {
      const ds = line.s[i] - line.s[i - 1];
      expect(Math.hypot(line.x[i] - line.x[i - 1], line.y[i] - line.y[i - 1])).toBeCloseTo(ds, 2);
      const mean = (line.curvature[i] + line.curvature[i - 1]) / 2;
      expect((line.heading[i] - line.heading[i - 1]) / ds).toBeCloseTo(mean, 2);
    }
  });

  it('changes little with more freedom, and never for the worse by much', () => {
    const freer = solved({ gates, turn: pair.turn, baseBevel: pair.baseBevel, conditions, piecesPerGate: 9 });
    expect(freer.seconds).toBeLessThan(line.seconds * 1.001);
    expect(freer.seconds).toBeGreaterThan(line.seconds * 0.985);
  });

  it('costs time to slow the edge change', () => {
    const slower = solved({
      gates,
      turn: pair.turn,
      baseBevel: pair.baseBevel,
      conditions,
      edgeRate: 140 * rad,
    });
    expect(slower.seconds).toBeGreaterThan(line.seconds);
    expect(slower.heldBackBy).toContain('edge rate');
  });

  it('mirrors with the set', () => {
    const mirrored = solved({
      gates: gates.map(gate => ({
        ...gate,
        x: -gate.x,
        turn: gate.turn === null ? null : gate.turn === 1 ? -1 : 1,
      })),
      turn: pair.turn,
      baseBevel: pair.baseBevel,
      conditions,
    });
    expect(mirrored.seconds).toBeCloseTo(line.seconds, 6);
  });

  it('says what cannot be kept instead of answering', () => {
    const slalom = quickLine({ gates: rhythmicSet(6, 10, 3), turn: cosineTurn(30), conditions });
    expect(slalom.ok).toBe(false);
    if (!slalom.ok) expect(say(slalom.reason)).toMatch(/least radius: .*54\skm\/h/);
    const upside = quickLine({ gates, finish: { x: 0, y: 10 }, conditions });
    expect(upside).toMatchObject({ ok: false });
    if (!upside.ok) expect(say(upside.reason)).toMatch(/^finish: 10\.0\sm/);
    expect(quickLine({ gates: [] }).ok).toBe(false);
  });

  it('tells its progress and can be stopped', () => {
    const rounds: number[] = [];
    const progress = (round: number, seconds: number) => {
      rounds.push(round);
      expect(seconds).toBeGreaterThan(5);
      return false;
    };
    const stopped = quickLine({ gates, turn: pair.turn, conditions, progress });
    expect(stopped).toEqual({ ok: false, reason: { key: 'course.stopped' } });
    expect(rounds).toEqual([0]);
  });
});
