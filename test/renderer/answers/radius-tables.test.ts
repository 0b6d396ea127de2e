import { describe, expect, it } from 'vitest';
import type { Pair } from '../../../core/pair/index.ts';
import { tableOf } from '../../../renderer/answers/radius-tables.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';

const pair = demoPairs[0]!;
const changed = (change: object) => ({ ...structuredClone(pair), ...change }) as Pair;

describe('a radius table', () => {
  it('is kept by content: the same ski on the same snow is one table, whatever it is called', () => {
    const table = tableOf(pair, 1e9);
    expect(tableOf(structuredClone(pair), 1e9)).toBe(table);
    expect(tableOf(changed({ name: 'Another', notes: 'new', massKg: 3 }), 1e9)).toBe(table);
    expect(tableOf(pair, 1e9, 0)).toBe(table);
  });

  it('is another for another ski, snow or place of the load', () => {
    const table = tableOf(pair, 1e9);
    const others = [
      tableOf(pair, 1.01e9),
      tableOf(pair, 1e9, 0.02),
      tableOf(changed({ waistWidthMm: pair.waistWidthMm + 0.001 }), 1e9),
      tableOf(changed({ torsion: undefined }), 1e9),
      tableOf(changed({ bootSoleMm: 290 }), 1e9),
    ];
    expect(new Set([table, ...others]).size).toBe(6);
  });

  it('is another for a plate moved by a millimetre', () => {
    const plated = (fromTailMm: number) =>
      tableOf(changed({ plate: { fromTailMm, lengthMm: 500, newtonM2: 60 } }), 1e9);
    expect(new Set([400, 401, 402].map(plated)).size).toBe(3);
  });

  it('is none, with the reason, for a pair without a stiffness', () => {
    expect(tableOf(changed({ bending: undefined }), 1e9).value).toMatchObject({
      table: null,
      missing: true,
      failure: expect.stringContaining('Bending stiffness: is missing'),
    });
  });
});
