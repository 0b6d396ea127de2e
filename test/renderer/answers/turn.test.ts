import { beforeEach, describe, expect, it } from 'vitest';
import { faultOf, unbendable } from '../../../renderer/answers/grooves.ts';
import { tableOf } from '../../../renderer/answers/radius-tables.ts';
import { request } from '../../../renderer/answers/request.ts';
import { turnOf } from '../../../renderer/answers/turn.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import {
  activePair,
  changeConditions,
  chooseOnly,
  EMPTY_PROJECT,
  load,
} from '../../../renderer/state/index.ts';
import { whyThisTurn } from '../../../renderer/views/edge/why.ts';

const { bending: _, torsion: __, ...bare } = demoPairs[0]!;
const broken = { ...demoPairs[0]!, bending: { kind: 'formula' as const, newtonM2: '200 - 400*s' } };

function show(pair: (typeof demoPairs)[number]) {
  const entry = { id: 'one', pair, saved: pair };
  load(chooseOnly(['one'])({ ...EMPTY_PROJECT, rack: [entry] }));
  return activePair.value!;
}

describe('a pair on edge', () => {
  beforeEach(() => load(EMPTY_PROJECT));

  it('turns by the cosine rule, and says so, when it has no bending stiffness', () => {
    const pair = show(bare);
    changeConditions('Edge angle', { edgeDeg: 60 });
    const { rule, radius, solved } = turnOf(pair);
    expect(unbendable(pair)).toBe(true);
    expect(solved).toBeNull();
    expect(radius).toBe(rule);
    expect(rule! / 12.2).toBeCloseTo(0.5, 1);
    expect(whyThisTurn(pair)).toMatch(/Cut to 12\.\d\sm; tipped to 60° .* rule for rigid snow/);
    expect(tableOf(bare, 1e9).value).toMatchObject({ table: null, missing: true, progress: null });
  });

  it('says which stiffness cannot be used and shows no radius in its place', () => {
    const pair = show(broken);
    expect(unbendable(pair)).toBe(false);
    expect(faultOf(pair)).toMatch(/bending/);
    expect(turnOf(pair).radius).toBeNull();
    expect(tableOf(broken, 1e9).value.failure).toMatch(/bending/);
  });

  it('asks the groove only what the controls can ask', () => {
    show(bare);
    changeConditions('All', { edgeDeg: 89, loadN: 9, hardnessNPerMm3: 500, foreMm: -900 });
    const { edgeAngle, load: force, hardness, fore } = request.value;
    expect([Math.round((edgeAngle * 1800) / Math.PI) / 10, force, hardness / 1e9, fore]).toEqual([
      75, 200, 90, -0.15,
    ]);
  });

  it('keeps one table a question, however the pair came by', () => {
    const again = structuredClone(demoPairs[0]!);
    expect(tableOf(demoPairs[0]!, 1e9)).toBe(tableOf(again, 1e9));
    expect(tableOf(demoPairs[0]!, 1e9)).not.toBe(tableOf(again, 1e10));
    expect(tableOf(demoPairs[0]!, 1e9)).not.toBe(tableOf(again, 1e9, 0.03));
  });
});
