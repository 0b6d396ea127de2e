import { describe, expect, it } from 'vitest';
import { bindingLoads, grooveLoads, pushOf } from '../../../core/boot/index.ts';
import {
  type CarveConditions,
  type CarvingSki,
  grooveSolver,
  pressureArm,
  pressureCentre,
} from '../../../core/carve/index.ts';
import { giantSlalomSki, hardness, radians, rigidInTorsion, slalomSki } from '../carve/demo.ts';

const request = { edgeAngle: radians(55), load: 1200, hardness: hardness(1), fore: 0 };

function solved(ski: CarvingSki, change: Partial<CarveConditions> = {}) {
  const answer = grooveSolver(ski).solve({ ...request, ...change });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

const cases = [
  ['slalom', slalomSki, {}],
  ['slalom, load ahead', slalomSki, { fore: 0.06 }],
  ['giant slalom on hard snow, load behind', giantSlalomSki, { fore: -0.04, hardness: hardness(30) }],
  [
    'rigid in torsion, nearly flat',
    rigidInTorsion(slalomSki),
    { edgeAngle: radians(8), hardness: hardness(0.1) },
  ],
] as const;

describe.each(cases)('the pressure of a solved ski: %s', (_, ski, change) => {
  const answer = solved(ski, change);
  const centre = pressureCentre(ski, answer);
  const { load, fore } = answer.conditions;

  it('adds up to the load, at the place it was put', () => {
    expect(centre.load / load).toBeCloseTo(1, 7);
    expect(centre.fore).toBeCloseTo(fore, 7);
  });

  it('hands load, lean and moments on to the binding', () => {
    const lean = answer.conditions.edgeAngle - radians(12);
    const loads = grooveLoads(ski, answer, { lean, height: 0.05, friction: 0.04 });
    const push = pushOf(centre.load, radians(12));
    expect(loads.normal).toBeCloseTo(load, 3);
    expect(loads.sideways).toBeCloseTo(-load * Math.tan(radians(12)), 3);
    expect(loads.foreAft).toBeCloseTo(-0.04 * push, 6);
    expect(loads.pitch).toBeCloseTo(load * fore - 0.04 * push * (0.05 - centre.rise), 3);
    expect(loads.yaw).toBeCloseTo(-load * Math.tan(radians(12)) * fore + 0.04 * push * centre.aside, 3);
  });

  it('is summed node by node into the same moments', () => {
    const lean = answer.conditions.edgeAngle - radians(20);
    const loads = grooveLoads(ski, answer, { lean, height: 0.05 });
    const tan = Math.tan(radians(20));
    let yaw = 0;
    const { x, lineLoad } = answer;
    for (let i = 0; i < x.length; i++) {
      const share = 0.5 * (x[Math.min(i + 1, x.length - 1)] - x[Math.max(i - 1, 0)]);
      yaw -= lineLoad[i] * share * (x[i] - ski.bootCentre) * tan;
    }
    expect(loads.yaw).toBeCloseTo(yaw, 6);
  });
});

describe('the centre of the pressure', () => {
  it('lies inside the widest half of the ski, and within the edge of a deep one', () => {
    const { aside } = pressureCentre(slalomSki, solved(slalomSki));
    expect(aside).toBeGreaterThan(0.02);
    expect(aside).toBeLessThan(slalomSki.edge.halfWidth(1.4));
  });

  it('lies further in where the ends carry: hard snow against soft', () => {
    const hard = pressureCentre(slalomSki, solved(slalomSki, { hardness: hardness(30) }));
    const soft = pressureCentre(slalomSki, solved(slalomSki, { hardness: hardness(0.1) }));
    expect(hard.aside).toBeGreaterThan(soft.aside);
    expect(hard.rise).toBeGreaterThan(0);
  });

  it('is held by the torques that twist fore- and afterbody, and by what presses under the sole', () => {
    const answer = solved(slalomSki);
    const { x, twist, lineLoad } = answer;
    const near = (at: number) => x.findIndex(each => Math.abs(each - at) < 1e-9);
    const [rear, front] = [near(0.66 - 0.15), near(0.66 + 0.15)];
    const torque = (from: number) => {
      const middle = 0.5 * (x[from] + x[from + 1]);
      const turn = Math.abs(twist[from + 1] - twist[from]) / (x[from + 1] - x[from]);
      return slalomSki.torsion!(middle) * turn;
    };
    const scratch = new Float64Array(6);
    let sole = 0;
    for (let i = rear; i <= front; i++)
      sole += lineLoad[i] * 0.5 * (x[i + 1] - x[i - 1]) * pressureArm(slalomSki, answer, i, scratch);
    const centre = pressureCentre(slalomSki, answer);
    const held = torque(front) + torque(rear - 1) + sole;
    expect(held / (centre.aside * centre.load)).toBeCloseTo(1, 2);
  });

  it('gives the loads of one moment of a run that knows it', () => {
    const answer = solved(slalomSki);
    const centre = pressureCentre(slalomSki, answer);
    const lean = radians(40);
    const boot = { height: 0.05, halfWaist: 0.033, friction: 0.04, centre };
    const load = pushOf(centre.load, radians(15));
    const turn = { load, lean, edgeAngle: radians(55) };
    expect(bindingLoads(turn, boot)).toEqual(
      grooveLoads(slalomSki, answer, { lean, height: 0.05, friction: 0.04 }),
    );
  });

  it('refuses a push along the base', () => {
    const turn = { lean: radians(-40), height: 0.05 };
    expect(() => grooveLoads(slalomSki, solved(slalomSki), turn)).toThrow(
      expect.objectContaining({ field: 'angulation' }),
    );
  });
});
