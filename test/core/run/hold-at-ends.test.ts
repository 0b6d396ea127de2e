import { describe, expect, it } from 'vitest';
import { cosineTurn, holdAtEnds, tableTurn } from '../../../core/run/index.ts';
import { demoTable } from './demo-table.ts';

const RAD = Math.PI / 180;
const rows = {
  hold: Float64Array.of(0.1, 0.1, 0),
  edge: Float64Array.of(50 * RAD, -50 * RAD, 20 * RAD),
  load: Float64Array.of(1200, 1200, 0),
};

describe('hold at the ends', () => {
  it('is the hold under the boot less the twist at that end, the same in turns to either side', () => {
    const turn = tableTurn(demoTable());
    const { tip, tail } = holdAtEnds(rows, turn);
    expect(tip[0]).toBeCloseTo(0.1 - turn.twistTip!(50 * RAD, 840), 12);
    expect(tail[0]).toBeCloseTo(0.1 - turn.twistTail!(50 * RAD, 840), 12);
    expect(tip[1]).toBe(tip[0]);
    // The demo table twists its tip more than its tail.
    expect(tip[0]).toBeLessThan(tail[0]);
    expect(tail[0]).toBeLessThan(0.1);
  });

  it('follows the share of the load on the outer ski', () => {
    const turn = tableTurn(demoTable());
    const tip = (share: number) => holdAtEnds(rows, turn, share).tip[0];
    expect(tip(1)).toBeLessThan(tip(0.6));
  });

  it('is the hold under the boot in the air and for a ski rigid in torsion', () => {
    expect(holdAtEnds(rows, tableTurn(demoTable())).tip[2]).toBe(0);
    const rigid = holdAtEnds(rows, cosineTurn(13));
    expect(rigid.tip).toEqual(rows.hold);
    expect(rigid.tail).toEqual(rows.hold);
    expect(rigid.tip).not.toBe(rows.hold);
  });
});
