import { describe, expect, it } from 'vitest';
import { type CarvingSki, cosineRadius, grooveSolver, holdAlong, wedgeSnow } from '../../core/carve/index.ts';
import {
  degrees,
  giantSlalomSki,
  hardness,
  hump,
  parabolicEdge,
  radians,
  rigidInTorsion,
  slalomSki,
} from '../core/carve/demo.ts';

function carve(ski: CarvingSki, edgeDeg: number, load: number, newtonPerMm3: number, law = wedgeSnow) {
  const conditions = { edgeAngle: radians(edgeDeg), load, hardness: hardness(newtonPerMm3), fore: 0 };
  const answer = grooveSolver(ski, { law }).solve(conditions);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

// Howe, Skiing Mechanics; Lind & Sanders, The Physics of Skiing [memory]: R = R_sc cosθ.
describe('rigid limit', () => {
  it('turns the whole ski on the cosine rule within 1 %, 10–65°, on 90 N/mm³, rigid in torsion', () => {
    for (const edge of [10, 20, 30, 40, 50, 60, 65]) {
      const { turnRadius } = carve(rigidInTorsion(slalomSki), edge, 1200, 90);
      expect(Math.abs(turnRadius / cosineRadius(12.5, radians(edge)) - 1)).toBeLessThan(0.01);
    }
  });
});

// Beam theory [derived]: a ski of EI₀(1 − |ξ|)², a parabola falling to zero at each end, bent to the curvature
// κ = tanθ/R_sc, pushes back on rigid snow with the even line load (EI κ)'' = 8 EI₀ κ/L²; a boot load of
// 8 EI₀ κ/L at the middle is in balance with it.
describe('parabolic stiffness on rigid snow', () => {
  it('spreads its load evenly', () => {
    const length = 1.4;
    const centre = 400;
    const edge = 50;
    const curvature = Math.tan(radians(edge)) / 13;
    const load = (8 * centre * curvature) / length;
    const ski: CarvingSki = {
      edge: parabolicEdge(length, 13, 0.066),
      bending: x => centre * ((1 - Math.abs((2 * x) / length - 1)) ** 2 + 1e-4),
      torsion: null,
      camber: 0,
      bootCentre: length / 2,
      soleLength: 0.02,
    };
    const { x, lineLoad } = carve(ski, edge, load, 90, { ...wedgeSnow, remembers: false });
    const even = load / length;
    for (let i = 0; i < x.length; i++) {
      const fromEnd = Math.min(x[i], length - x[i]) / length;
      if (fromEnd > 0.1 && fromEnd < 0.4) expect(Math.abs(lineLoad[i] / even - 1)).toBeLessThan(0.03);
    }
  });
});

// Acta Mechanica (2021), doi 10.1007/s00707-021-03080-8 [seen introduction]: contact loads concentrate at the
// ends of the sidecut.
describe('uniform stiffness', () => {
  it('loads the ends of the sidecut most', () => {
    const ski: CarvingSki = {
      ...slalomSki,
      bending: () => 250,
      torsion: null,
      edge: parabolicEdge(1.4, 12.5, 0.066),
    };
    const { x, lineLoad } = carve(ski, 50, 800, 30, { ...wedgeSnow, remembers: false });
    const mean = (from: number, to: number) => {
      const inside = lineLoad.filter((_, i) => x[i] >= from && x[i] <= to);
      return inside.reduce((sum, load) => sum + load, 0) / inside.length;
    };
    expect(mean(0, 0.05)).toBeGreaterThan(3 * mean(0.2, 0.45));
    expect(mean(1.35, 1.4)).toBeGreaterThan(3 * mean(0.95, 1.2));
  });
});

// Federolf, Roos, Lüthi, Dual, Sports Eng. 12 (2010) 123–133 [seen abstract]: the groove's plasticity matters.
// The figures come from a trial of the same equations [derived].
describe('soft snow', () => {
  const flexible: CarvingSki = { ...giantSlalomSki, bending: hump(1.66, 330, 56) };

  // The trial's figure, about 14 m, is of the part behind the boot, which follows last; the whole loaded edge, of
  // which the front comes in shallower, turns tighter still.
  it('tightens the long straight ski from 15.7 m by the rule, its rear to about 14 m, at 50° on 0.1 N/mm³', () => {
    expect(cosineRadius(24.5, radians(50))).toBeCloseTo(15.75, 2);
    const { turnRadius, rear } = carve(flexible, 50, 2000, 0.1);
    expect(rear.tooShort).toBe(false);
    expect(rear.radius).toBeGreaterThan(13.5);
    expect(rear.radius).toBeLessThan(14.7);
    expect(turnRadius).toBeLessThan(rear.radius);
  });

  it('gets tighter with softness', () => {
    const radii = [90, 10, 1, 0.3, 0.1].map(snow => carve(flexible, 50, 2000, snow).turnRadius);
    for (let i = 1; i < radii.length; i++) expect(radii[i]).toBeLessThan(radii[i - 1] * 1.001);
  });
});

// Magnitudes of a trial of the same equations [derived].
describe('twist', () => {
  it('is 1–2.5° towards tip and tail at 1200 N', () => {
    for (const edge of [45, 55, 65]) {
      const { twistTip, twistTail } = carve(slalomSki, edge, 1200, 30);
      for (const twist of [twistTip, twistTail]) {
        expect(degrees(twist)).toBeGreaterThan(1);
        expect(degrees(twist)).toBeLessThan(2.5);
      }
    }
  });

  it('opens the turn past the rule on hard snow and takes the hold of the ends first', () => {
    const answer = carve(slalomSki, 55, 1200, 30);
    const opened = answer.turnRadius / cosineRadius(12.5, radians(55)) - 1;
    expect(opened).toBeGreaterThan(0);
    expect(opened).toBeLessThan(0.06);
    const hold = holdAlong(answer, slalomSki.bootCentre, radians(52.5), radians(0.5));
    expect(['tip', 'tail']).toContain(hold.lostFirst);
    expect(hold.boot).toBeCloseTo(radians(2), 12);
    expect(hold.least).toBeLessThan(hold.boot);
  });
});

// Mössner et al., Modeling of the ski-snow contact for a carved turn [seen]: depth is irreversible; the tail
// keeps nearly the greatest depth.
describe('groove depth', () => {
  it('never decreases from boot to tail, and the tail keeps nearly the greatest depth', () => {
    const { x, groove, penetration, maxPenetration } = carve(slalomSki, 50, 1200, 1);
    for (let i = x.length - 2; i >= 0; i--) expect(groove[i]).toBeGreaterThanOrEqual(groove[i + 1]);
    expect(penetration[0]).toBeGreaterThan(0.9 * maxPenetration);
  });
});
