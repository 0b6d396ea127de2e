import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rhythmicSet } from '../../../../core/course/index.ts';
import { gateAfter } from '../../../../renderer/views/set/new-gate.ts';
import { planScale, roomDown } from '../../../../renderer/views/set/plan-scale.ts';

const box = { left: 40, right: 640, top: 30, bottom: 200 };
const gates = rhythmicSet(30, 11, 3);

describe('the plan of a set', () => {
  it('keeps every gate in view inside the drawing, downhill to the right, the skier’s right below', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.constantFrom(0, 6, 12),
        fc.boolean(),
        fc.nat(60),
        (count, spacing, offset, inView, trueScale, selected) => {
          const set = rhythmicSet(count, spacing, offset);
          const scale = planScale(set, box, Math.min(selected, count - 1), inView, trueScale);
          expect(scale.perMetre).toBeGreaterThan(0);
          for (const gate of set.slice(scale.from, scale.to + 1)) {
            expect(scale.down(gate.y)).toBeGreaterThanOrEqual(box.left - 1e-6);
            expect(scale.down(gate.y)).toBeLessThanOrEqual(box.right + 1e-6);
            expect(scale.across(gate.x)).toBeGreaterThanOrEqual(box.top - 1e-6);
            expect(scale.across(gate.x)).toBeLessThanOrEqual(box.bottom + 1e-6);
            expect(scale.invertDown(scale.down(gate.y))).toBeCloseTo(gate.y, 6);
            expect(scale.invertAcross(scale.across(gate.x))).toBeCloseTo(gate.x, 6);
          }
          expect(scale.down(2) - scale.down(1)).toBeCloseTo(scale.perMetre, 9);
          expect(scale.across(2) - scale.across(1)).toBeCloseTo(scale.perMetre * scale.times, 9);
          if (trueScale) expect(scale.times).toBe(1);
        },
      ),
    );
  });

  it('draws one gate, gates beside each other, behind the start and far apart', () => {
    const at = (x: number, y: number) => ({ ...gates[0], x, y });
    for (const set of [
      [at(0, 0)],
      [at(1, 5), at(-1, 5)],
      [at(2, -40), at(-2, -30)],
      [at(-1e5, -1e5), at(1e5, 1e5)],
    ]) {
      for (const trueScale of [true, false]) {
        const scale = planScale(set, box, 0, 12, trueScale);
        for (const gate of set) {
          for (const px of [scale.down(gate.y), scale.across(gate.x)]) expect(Number.isFinite(px)).toBe(true);
          expect(scale.across(gate.x)).toBeGreaterThanOrEqual(box.top - 1e-6);
          expect(scale.across(gate.x)).toBeLessThanOrEqual(box.bottom + 1e-6);
        }
      }
    }
  });

  it('holds the selected gate in view', () => {
    for (const at of [0, 3, 15, 29]) {
      const { from, to } = planScale(gates, box, at, 6, false);
      expect(to - from).toBe(5);
      expect(at).toBeGreaterThanOrEqual(from);
      expect(at).toBeLessThanOrEqual(to);
    }
  });

  it('lets no gate pass its neighbours', () => {
    expect(roomDown(gates, 3)).toEqual([gates[2].y + 1, gates[4].y - 1]);
    expect(roomDown(gates, 0)[0]).toBeLessThan(0);
    // Gates of a file may stand closer, or beside each other: they stay where they are.
    const close = [5, 5.4, 5.4, 6].map((y, i) => ({ ...gates[i], y }));
    expect(close.map((_, at) => roomDown(close, at))).toEqual([
      [-1e4, 5],
      [5.4, 5.4],
      [5.4, 5.4],
      [6, 1e4],
    ]);
  });
});

describe('a new gate', () => {
  it('goes on with the rhythm below the last, under a name not taken', () => {
    const last = gates.length - 1;
    const made = gateAfter(gates, last);
    expect(made).toMatchObject({ label: '31', x: gates[last - 1].x, y: gates[last].y + 11, colour: 'red' });
  });

  it('stands midway where there is a gate below', () => {
    const made = gateAfter(gates, 4);
    expect(made.y).toBeCloseTo((gates[4].y + gates[5].y) / 2, 9);
    expect(gates.some(gate => gate.label === made.label)).toBe(false);
  });

  it('begins a set', () => {
    expect(gateAfter([], -1).label).toBe('1');
  });
});
