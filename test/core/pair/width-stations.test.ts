import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, readPair, skiOf, writePair } from '../../../core/pair/index.ts';
import { larch } from './larch.ts';

describe('width stations of a pair file', () => {
  it('reach along the edge and narrow between the ends', () => {
    const widthStations = [200, 400, 600, 800, 1000].map(fromTailMm => ({
      fromTailMm,
      widthMm: 70 + fromTailMm / 100,
    }));
    expect(checkPair({ ...larch, widthStations })).toHaveLength(2);
  });

  it('are kept and not used while they are fewer than five', () => {
    const all = [0, 400, 700, 1000].map(fromTailMm => ({ fromTailMm, widthMm: 104, by: 'caliper' }));
    for (let count = 0; count <= 4; count++) {
      const text = JSON.stringify({ ...larch, widthStations: all.slice(0, count) });
      const read = readPair(text);
      if (!read.ok) throw new Error(say(read.problems[0]));
      expect(JSON.parse(writePair(read.pair)).widthStations).toEqual(all.slice(0, count));
      const ski = skiOf(read.pair);
      expect([ski.widthStations, ski.unusedWidthStations ?? 0]).toEqual([null, count]);
    }
  });

  it('are checked for range and order, be they ever so few', () => {
    const faults = (...stations: [number, number][]) =>
      checkPair({
        ...larch,
        widthStations: stations.map(([fromTailMm, widthMm]) => ({ fromTailMm, widthMm })),
      }).map(each => each.field);
    expect(faults([0, 10])).toEqual(['widthStations[0].widthMm']);
    expect(faults([-1, 100])).toEqual(['widthStations[0].fromTailMm']);
    expect(faults([larch.contactLengthMm + 1, 100])).toEqual(['widthStations[0].fromTailMm']);
    expect(faults([400, 80], [0, 104])).toEqual(['widthStations[1].fromTailMm']);
  });
});
