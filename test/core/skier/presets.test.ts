import { describe, expect, it } from 'vitest';
import { buildRadiusTable, carvingSkiOf, wallStrengthOf } from '../../../core/carve/index.ts';
import { fieldsOf, inSi, USUAL } from '../../../core/conditions/index.ts';
import { skiOf } from '../../../core/pair/index.ts';
import { evenSlope, linkedTurns, solveRun, turnOf } from '../../../core/run/index.ts';
import { GRIP_FROM, legOfHeight, legSpanOf, SKIER_PRESETS, standingLeg } from '../../../core/skier/index.ts';
import larch from '../../../renderer/demo/larch-155.pair.json' with { type: 'json' };
import maple from '../../../renderer/demo/maple-178.pair.json' with { type: 'json' };
import rowan from '../../../renderer/demo/rowan-165.pair.json' with { type: 'json' };
import willow from '../../../renderer/demo/willow-185.pair.json' with { type: 'json' };

const PAIRS = {
  'junior-slalom': larch,
  'junior-giant-slalom': maple,
  'senior-slalom': rowan,
  'senior-giant-slalom': willow,
} as const;

describe('presets of skier and hill', () => {
  it.each(SKIER_PRESETS)('$id: six turns carve, nothing slips, and there is grip to spare', preset => {
    const ski = skiOf(PAIRS[preset.id] as Parameters<typeof skiOf>[0]);
    const carving = carvingSkiOf(ski);
    if (!carving.ok) throw new Error(JSON.stringify(carving.reason));
    const table = buildRadiusTable(carving.ski, 1e9, {});
    if (table === null || 'ok' in table) throw new Error('no table');
    const said = { ...USUAL, ...preset.conditions };
    const { slope, edgeAngle, period, turns, ...skier } = inSi(said, [
      'slopeDeg',
      'edgeDeg',
      'massKg',
      ...fieldsOf('start', 'turns', 'glide'),
    ]);
    const run = solveRun({
      turn: turnOf({ table }),
      profile: evenSlope(slope),
      programme: linkedTurns({ peakEdge: edgeAngle, period, turns }),
      baseBevel: ski.baseBevel,
      contactLength: ski.contactLength,
      ...skier,
      ...legSpanOf(said),
      wallStrength: wallStrengthOf(said),
    });
    if (!run.ok) throw new Error(run.limit);
    const { track } = run;
    expect(track.summary.skidSeconds).toBe(0);
    expect(track.summary.airSeconds).toBe(0);
    expect(track.summary.maxWall).toBeGreaterThan(0.1);
    expect(track.summary.maxWall).toBeLessThan(0.9);
    const judged = track.hold.filter((_, row) => Math.abs(track.edge[row]!) >= GRIP_FROM);
    expect(judged.length).toBeGreaterThan(100);
    expect(Math.min(...judged)).toBeGreaterThanOrEqual(0);
    // The first of them is the first run anybody sees: not even a rolling edge is short of grip.
    if (preset === SKIER_PRESETS[0]) expect(track.summary.minHold).toBeGreaterThanOrEqual(0);
  });

  it('are four of different names, juniors lighter and smaller', () => {
    expect(new Set(SKIER_PRESETS.map(each => each.id)).size).toBe(4);
    const [junior, , senior] = SKIER_PRESETS;
    expect(junior!.conditions.massKg).toBeLessThan(senior!.conditions.massKg);
    expect(junior!.conditions.heightM).toBeLessThan(senior!.conditions.heightM);
  });
});

describe('the leg of a body', () => {
  it('is 0.57 of its height, folds, and stands a little bent', () => {
    expect(legOfHeight(1.75).legLongest).toBeCloseTo(0.9975, 9);
    expect(legOfHeight(1.75).legShortest).toBeLessThan(0.7 * legOfHeight(1.75).legLongest);
    expect(standingLeg(1.75)).toBeLessThan(legOfHeight(1.75).legLongest);
    expect(standingLeg(1.75)).toBeGreaterThan(legOfHeight(1.75).legShortest);
  });

  it('names what it cannot use', () => {
    expect(() => legOfHeight(0.3)).toThrow(
      expect.objectContaining({ field: 'height', accepted: { from: 0.9, to: 2.3, quantity: 'bodyLength' } }),
    );
  });
});
