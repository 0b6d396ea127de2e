import { describe, expect, it } from 'vitest';
import { quickLine } from '../../core/course/index.ts';

/**
 * The brachistochrone on an incline without friction is a cycloid [derived]. Independent check: the cycloid's
 * own time t = Φ √(r/(g sinα)) with (Φ − sinΦ)/(1 − cosΦ) = across/down and r = down/(1 − cosΦ).
 */
function cycloidSeconds(across: number, down: number, slope: number): number {
  let low = 1e-6;
  let high = 2 * Math.PI - 1e-6;
  for (let i = 0; i < 200; i++) {
    const phi = (low + high) / 2;
    if ((phi - Math.sin(phi)) / (1 - Math.cos(phi)) < across / down) low = phi;
    else high = phi;
  }
  return low * Math.sqrt(down / (1 - Math.cos(low)) / (9.81 * Math.sin(slope)));
}

function straightSeconds(across: number, down: number, slope: number): number {
  const length = Math.hypot(across, down);
  return Math.sqrt((2 * length * length) / (9.81 * Math.sin(slope) * down));
}

function quickest(across: number, down: number, degrees: number): number {
  const line = quickLine({
    gates: [],
    start: { x: 0, y: 0 },
    finish: { x: across, y: down },
    hold: false,
    edgeRate: Number.POSITIVE_INFINITY,
    mostBraking: Number.POSITIVE_INFINITY,
    conditions: { slope: (degrees * Math.PI) / 180, friction: 0, dragArea: 0, startSpeed: 0 },
  });
  if (!line.ok) throw new Error(JSON.stringify(line.reason));
  return line.seconds;
}

describe('the quick line without gates, friction or limits', () => {
  it.each([
    [10, 10, 15, 3.6232, 3.9691],
    [8, 24, 20, 3.9344, 3.9869],
  ])('%d m across and %d m down at %d°: %d s, straight %d s', (across, down, degrees, cycloid, straight) => {
    const slope = (degrees * Math.PI) / 180;
    expect(cycloidSeconds(across, down, slope)).toBeCloseTo(cycloid, 4);
    expect(straightSeconds(across, down, slope)).toBeCloseTo(straight, 4);
    const found = quickest(across, down, degrees);
    expect(found).toBeGreaterThan(cycloid - 5e-4);
    expect(found).toBeCloseTo(cycloid, 3);
  });

  it('half an arch: straight over cycloid is √(π² + 4)/π = 1.18545', () => {
    const ratio = Math.sqrt(Math.PI ** 2 + 4) / Math.PI;
    expect(ratio).toBeCloseTo(1.18545, 5);
    const across = 5 * Math.PI;
    // The cycloid ends square to the fall line there, which x(y) can only come near.
    expect(straightSeconds(across, 10, Math.PI / 12) / quickest(across, 10, 15)).toBeCloseTo(ratio, 3);
  });
});
