import { describe, expect, it } from 'vitest';
import { fitRhythmicSet, setRadius, setTurnAngle } from '../../core/course/index.ts';

const deg = 180 / Math.PI;

/** Rhythmic set in closed form: plane geometry [derived]. */
describe('the rhythmic set', () => {
  it('10 m by 3 m asks for 109/12 = 9.0833 m and turns 33.398° either side', () => {
    expect(setRadius(10, 3)).toBeCloseTo(109 / 12, 12);
    expect(setTurnAngle(10, 3) * deg).toBeCloseTo(33.398, 3);
  });

  it('asks 45.68° of a 13 m ski and 72.37° of a 30 m ski', () => {
    const short = fitRhythmicSet(10, 3, 13);
    const long = fitRhythmicSet(10, 3, 30);
    expect(short.kind).toBe('arcs');
    expect(short.edgeAngle * deg).toBeCloseTo(45.675, 2);
    expect(long.edgeAngle * deg).toBeCloseTo(72.374, 2);
  });

  it('26 m by 7 m (25.89 m) fits a 30 m ski at 30.3°; a 13 m ski needs traverses', () => {
    expect(setRadius(26, 7)).toBeCloseTo(725 / 28, 12);
    expect(fitRhythmicSet(26, 7, 30).edgeAngle * deg).toBeCloseTo(30.334, 3);
    const short = fitRhythmicSet(26, 7, 13);
    expect(short.kind).toBe('arcs and traverses');
    if (short.kind !== 'arcs and traverses') return;
    // Walking the two arcs and the traverse must arrive at the next gate.
    const across =
      2 * short.radius * (1 - Math.cos(short.turnAngle)) + short.traverse * Math.sin(short.turnAngle);
    const down = 2 * short.radius * Math.sin(short.turnAngle) + short.traverse * Math.cos(short.turnAngle);
    expect(across).toBeCloseTo(7, 10);
    expect(down).toBeCloseTo(26, 10);
  });
});
