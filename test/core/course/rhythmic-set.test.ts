import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  fitRhythmicSet,
  neededEdgeWorking,
  rhythmicSet,
  setRadius,
  setRadiusWorking,
} from '../../../core/course/index.ts';

const spacing = fc.double({ min: 5, max: 40, noNaN: true });
const share = fc.double({ min: 0.05, max: 0.5, noNaN: true });

describe('fitRhythmicSet', () => {
  it('always arrives at the next gate', () => {
    fc.assert(
      fc.property(spacing, share, fc.double({ min: 0.05, max: 1.5, noNaN: true }), (s, part, ski) => {
        const o = part * s;
        const fit = fitRhythmicSet(s, o, ski * setRadius(s, o));
        const straight = fit.kind === 'arcs and traverses' ? fit.traverse : 0;
        const { radius: r, turnAngle: b } = fit;
        expect(2 * r * (1 - Math.cos(b)) + straight * Math.sin(b)).toBeCloseTo(o, 8);
        expect(2 * r * Math.sin(b) + straight * Math.cos(b)).toBeCloseTo(s, 8);
      }),
    );
  });

  it('leaves no traverse where the ski just fills the set', () => {
    const fit = fitRhythmicSet(10, 3, setRadius(10, 3) * (1 - 1e-12));
    expect(fit.kind === 'arcs and traverses' && fit.traverse).toBeLessThan(1e-4);
  });

  it('names the field at fault', () => {
    expect(() => setRadius(0, 3)).toThrow(expect.objectContaining({ field: 'spacing' }));
    expect(() => rhythmicSet(1.5, 10, 3)).toThrow(expect.objectContaining({ field: 'count' }));
  });
});

describe('workings', () => {
  it('evaluate to their results', () => {
    for (const working of [setRadiusWorking(10, 3), neededEdgeWorking(10, 3, 13)]) {
      const scope = Object.fromEntries(working!.inputs.map(input => [input.name, input.value]));
      expect(evaluate(working!.formula, scope)).toBeCloseTo(working!.result.value, 12);
    }
    expect(neededEdgeWorking(26, 7, 13)).toBeNull();
  });
});
