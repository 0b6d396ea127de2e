import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BINDING_CAUTION,
  type BootOnSki,
  bindingLoadColumns,
  bindingLoads,
  bootMoment,
} from '../../../core/boot/index.ts';
import { say } from '../../../core/language/index.ts';

const DEGREE = Math.PI / 180;
const number = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
const turns = fc.record({
  load: number(0, 5000),
  lean: number(-1.2, 1.2),
  edgeAngle: number(-1.3, 1.3),
});
const boots = fc.record({
  height: number(0, 0.1),
  halfWaist: number(0.02, 0.06),
  friction: number(0, 0.3),
});
const boot: BootOnSki = { height: 0.093, halfWaist: 0.033, friction: 0.05 };

describe('loads handed to the binding', () => {
  it('add up to the push and the friction', () => {
    fc.assert(
      fc.property(turns, boots, (turn, on) => {
        const { normal, sideways, foreAft } = bindingLoads(turn, on);
        expect(Math.hypot(normal, sideways)).toBeCloseTo(turn.load, 8);
        expect(foreAft).toBeCloseTo(-on.friction * turn.load, 10);
        // Turned back into the frame of the slope they lean as they were given.
        const { sin, cos } = Math;
        expect(normal * cos(turn.edgeAngle) - sideways * sin(turn.edgeAngle)).toBeCloseTo(
          turn.load * cos(turn.lean),
          8,
        );
        expect(normal * sin(turn.edgeAngle) + sideways * cos(turn.edgeAngle)).toBeCloseTo(
          turn.load * sin(turn.lean),
          8,
        );
      }),
    );
  });

  it('mirror from a right turn to a left one', () => {
    fc.assert(
      fc.property(turns, boots, (turn, on) => {
        const right = bindingLoads(turn, on);
        const left = bindingLoads({ ...turn, lean: -turn.lean, edgeAngle: -turn.edgeAngle }, on);
        expect(left.normal).toBeCloseTo(right.normal, 9);
        expect(left.pitch).toBeCloseTo(right.pitch, 9);
        for (const name of ['sideways', 'roll', 'yaw'] as const)
          expect(left[name]).toBeCloseTo(-right[name], 9);
      }),
    );
  });

  it('have the boot moment of the closed form as their roll', () => {
    const loads = bindingLoads({ load: 1200, lean: 45 * DEGREE, edgeAngle: 60 * DEGREE }, boot);
    expect(loads.roll).toBeCloseTo(bootMoment(1200, { aside: 0.033, below: 0.093 }, 15 * DEGREE), 6);
    expect(loads.roll).toBeGreaterThan(0);
  });

  it('turn and tip the boot the way friction and the load centre do', () => {
    const at = { load: 1000, lean: 40 * DEGREE, edgeAngle: 60 * DEGREE };
    const behind = { ...boot, friction: 0, centre: { fore: 0.05, aside: 0.033, rise: 0 } };
    const ahead = bindingLoads(at, behind);
    expect(ahead.pitch).toBeCloseTo(0.05 * 1000 * Math.cos(20 * DEGREE), 9);
    expect(ahead.yaw).toBeCloseTo(-0.05 * 1000 * Math.sin(20 * DEGREE), 9);
    const dragged = bindingLoads(at, boot);
    expect(dragged.pitch).toBeCloseTo(-0.093 * 50, 9);
    expect(dragged.yaw).toBeCloseTo(0.033 * 50, 5);
  });

  it('press a flat ski in its middle', () => {
    const flat = bindingLoads({ load: 800, lean: 0, edgeAngle: 0 }, boot);
    expect(flat).toMatchObject({ normal: 800, roll: 0, yaw: 0 });
    expect(Math.abs(flat.sideways)).toBe(0);
  });

  it.each([
    ['load', { load: -1 }],
    ['lean', { lean: 2 }],
    ['edgeAngle', { edgeAngle: Number.NaN }],
  ])('refuse %s by name', (field, change) => {
    const turn = { load: 800, lean: 0, edgeAngle: 0.5, ...change };
    expect(() => bindingLoads(turn, boot)).toThrow(expect.objectContaining({ field }));
  });

  it.each([
    ['height', { height: -0.01 }],
    ['halfWaist', { halfWaist: 0 }],
    ['friction', { friction: Number.POSITIVE_INFINITY }],
  ])('refuse %s of the boot by name', (field, change) => {
    const turn = { load: 800, lean: 0, edgeAngle: 0.5 };
    expect(() => bindingLoads(turn, { ...boot, ...change })).toThrow(new RegExp(`^${field}: .* accepted: `));
  });

  it('come with words that they are no setting', () => {
    expect(say(BINDING_CAUTION)).toMatch(/never set or approve a binding/);
  });
});

describe('loads through a run', () => {
  const rows = {
    load: Float64Array.of(800, 1600, 1200),
    lean: Float64Array.of(-0.5, 0.1, 0.7),
    edgeAngle: Float64Array.of(-0.8, 0, 1),
  };

  it('are those of each of its moments, with the share this ski carries', () => {
    const columns = bindingLoadColumns(rows, boot, 0.7);
    for (let row = 0; row < 3; row++) {
      const { load, lean, edgeAngle } = rows;
      const one = bindingLoads({ load: 0.7 * load[row], lean: lean[row], edgeAngle: edgeAngle[row] }, boot);
      for (const name of Object.keys(one) as (keyof typeof one)[])
        expect(columns[name][row]).toBeCloseTo(one[name], 12);
    }
  });

  it('take the load centre row by row', () => {
    const fore = [0.02, 0, -0.03];
    const centred = bindingLoadColumns(rows, boot);
    const moved = bindingLoadColumns({ ...rows, fore }, boot);
    for (let row = 0; row < 3; row++) {
      expect(moved.pitch[row] - centred.pitch[row]).toBeCloseTo(fore[row] * centred.normal[row], 9);
      expect(moved.yaw[row] - centred.yaw[row]).toBeCloseTo(fore[row] * centred.sideways[row], 9);
      expect(moved.roll[row]).toBe(centred.roll[row]);
    }
  });

  it('say nothing of a row without a reading, and everything of its neighbours', () => {
    const columns = bindingLoadColumns({ ...rows, load: [800, Number.NaN, 1200] }, boot);
    expect(columns.roll[1]).toBeNaN();
    expect(Number.isFinite(columns.roll[0] + columns.roll[2])).toBe(true);
  });

  it('refuse columns of other lengths and a share beyond the whole', () => {
    expect(() => bindingLoadColumns({ ...rows, lean: [0] }, boot)).toThrow(
      expect.objectContaining({ field: 'lean' }),
    );
    expect(() => bindingLoadColumns(rows, boot, 1.2)).toThrow(expect.objectContaining({ field: 'share' }));
  });
});
