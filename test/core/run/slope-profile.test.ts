import { describe, expect, it } from 'vitest';
import {
  cosineTurn,
  demoProfiles,
  dynamicMoment,
  evenSlope,
  heldEdge,
  linkedTurns,
  profileThrough,
  readProfile,
  type SlopeProfile,
  slopeAngle,
  solveRun,
} from '../../../core/run/index.ts';
import { told } from '../fault/told.ts';

const RAD = Math.PI / 180;

function consistent(profile: SlopeProfile): void {
  const h = 1e-4;
  for (let y = 3.17; y < 200; y += 7.31) {
    const rise = (profile.height(y + h) - profile.height(y - h)) / (2 * h);
    expect(-rise).toBeCloseTo(profile.sine(y), 7);
    const bend = -(slopeAngle(profile, y + h) - slopeAngle(profile, y - h)) / (2 * h);
    expect(bend).toBeCloseTo(profile.curvature(y), 6);
    const across = (profile.horizontal(y + h) - profile.horizontal(y - h)) / (2 * h);
    expect(across).toBeCloseTo(Math.sqrt(1 - profile.sine(y) ** 2), 5);
    expect(profile.along(profile.horizontal(y))).toBeCloseTo(y, 8);
  }
}

describe('profiles', () => {
  it('height, slope, curvature and horizontal distance agree with each other', () => {
    for (const profile of demoProfiles()) {
      expect(profile.demo).toBe(true);
      consistent(profile);
    }
  });

  it('points on one line are an even slope', () => {
    const profile = profileThrough([0, 40, 90, 200], [0, -10, -22.5, -50]);
    const even = evenSlope(Math.atan(0.25));
    for (const y of [-5, 0, 17.3, 100, profile.length, 230]) {
      expect(profile.height(y)).toBeCloseTo(even.height(y), 9);
      expect(profile.sine(y)).toBeCloseTo(even.sine(y), 9);
      expect(profile.curvature(y)).toBeCloseTo(0, 8);
      expect(profile.along(profile.horizontal(y))).toBeCloseTo(y, 8);
    }
    expect(profile.length).toBeCloseTo(Math.hypot(200, 50), 9);
  });

  it('a valley of radius 50 m has curvature 1/50, positive in the dip', () => {
    const d = Array.from({ length: 61 }, (_, i) => -30 + i);
    const profile = profileThrough(
      d,
      d.map(x => 50 - Math.sqrt(2500 - x * x)),
    );
    expect(profile.curvature(profile.along(30))).toBeCloseTo(1 / 50, 4);
    expect(profile.sine(profile.along(30))).toBeCloseTo(0, 6);
  });

  it('reads distance and height, with altitudes, a heading and remarks', () => {
    const profile = readProfile('distance,height\n# start hut\n0,1820\n50,1810\n100,1798\n');
    expect(profile.height(profile.along(100))).toBeCloseTo(-22, 9);
    const comma = readProfile('0;0\n50,5;-10,25\n');
    expect(comma.height(comma.length)).toBeCloseTo(-10.25, 9);
  });

  it('tells every bad row by its line, what was found and what is accepted', () => {
    const faults = told(() => readProfile('m,m\n0,0\n10,steep\n20,-4,7\n15,-3\n12,-2\n'));
    expect(faults).toEqual([
      'line 3, height (m): "steep" is not accepted; accepted is a number',
      'line 4, row: 20,-4,7 is not accepted; accepted is two values, distance (m) and height (m)',
      'line 6, distance (m): 12 is not accepted; accepted is a number above 15',
    ]);
    expect(told(() => readProfile(''))[0]).toMatch(/^rows: 0 /);
    expect(told(() => profileThrough([0, 1], [0, -60]))[0]).toMatch(/^row 2, height: -60 m .*-5.67/);
    expect(told(() => evenSlope(2))).toEqual([
      'slope: 114.6° is not accepted; accepted is a number from 0.0 to below 80.0°',
    ]);
  });
});

describe('ground that cannot be skied', () => {
  it('is told by the line of the file where it is too steep', () => {
    expect(told(() => readProfile('distance,height\n0,0\n10,-2\n11,-40\n'))[0]).toMatch(
      /^line 4, height: -40 m is not accepted; accepted is a number from -7.67\d* to 3.67\d* m$/,
    );
  });
});

describe('a run on uneven ground', () => {
  const skier = {
    turn: cosineTurn(13),
    mass: 75,
    friction: 0.03,
    dragArea: 0.4,
    airDensity: 1.1,
    legShortest: 0.6,
    legLongest: 1,
  };

  it('closes the energy book over dips, crests and flights', () => {
    for (const profile of demoProfiles()) {
      const run = solveRun({
        ...skier,
        profile,
        programme: linkedTurns({ peakEdge: 40 * RAD, period: 3, turns: 4 }),
        startSpeed: 8,
      });
      if (!run.ok) throw new Error(run.limit);
      expect(run.track.summary.energyErrorRatio).toBeLessThan(1e-6);
    }
  });

  it('presses harder in a dip and lighter over a crest: m v² κ', () => {
    const d = Array.from({ length: 101 }, (_, i) => 2 * i);
    const wave = profileThrough(
      d,
      d.map(x => -0.2 * x + 0.5 * Math.cos(x / 8)),
    );
    const run = solveRun({ ...skier, profile: wave, programme: heldEdge(0, 12), startSpeed: 8 });
    if (!run.ok) throw new Error(run.limit);
    const { track } = run;
    for (let i = 20; i < track.t.length - 20; i += 20) {
      const moment = dynamicMoment(track, i, { profile: wave, mass: 75 });
      const steady =
        75 *
        (9.81 * Math.cos(slopeAngle(wave, track.y[i])) +
          track.speed[i] * track.skiSpeed[i] * wave.curvature(track.y[i]));
      expect(track.load[i]).toBeCloseTo(steady + 75 * moment.legAcceleration, -0.5);
    }
  });

  it('flies off a sharp crest and comes down', () => {
    const d = [0, 20, 40, 50, 55, 60, 70, 90, 130, 200];
    const z = [0, -4, -8, -10, -11, -13, -19, -31, -53, -85];
    const run = solveRun({
      ...skier,
      friction: 0,
      dragArea: 0,
      profile: profileThrough(d, z),
      programme: heldEdge(0, 10),
      startSpeed: 15,
    });
    if (!run.ok) throw new Error(run.limit);
    const { track } = run;
    const off = track.events.find(e => e.name === 'airborne');
    const down = track.events.find(e => e.name === 'landed');
    expect(off && down).toBeTruthy();
    expect((down?.t ?? 0) - (off?.t ?? 0)).toBeGreaterThan(0.1);
    expect(track.summary.airSeconds).toBeGreaterThan(0.1);
    expect(track.summary.energyErrorRatio).toBeLessThan(1e-6);
    const air = track.t.findIndex(t => t > (off?.t ?? 0) + 0.02);
    expect(track.phase[air]).toBe(3);
    expect(track.load[air]).toBe(0);
    expect(track.summary.end).toBe('end of slope');
  });
});
