import { describe, expect, it } from 'vitest';
import { checkPair } from '../../../core/pair/index.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { comparisonsOf } from '../../../renderer/rack/comparisons.ts';
import { demoEntries } from '../../../renderer/rack/demo-rack.ts';
import { startingPair } from '../../../renderer/rack/new-pair.ts';
import { applyDraft, textOf } from '../../../renderer/rack/pair-draft.ts';
import { NUMBER_FIELDS } from '../../../renderer/rack/pair-fields.ts';

const larch = demoPairs[0]!;

describe('the pair form', () => {
  it('starts a new pair that is a pair', () => {
    expect(checkPair(startingPair())).toEqual([]);
  });

  it('changes nothing when nothing is typed, in either system', () => {
    for (const pair of demoPairs) {
      expect(applyDraft(pair, {}, 'imperial')).toEqual({ ok: true, pair });
    }
  });

  it('reads its own texts back to the same pair in metric', () => {
    for (const pair of demoPairs) {
      const typed = Object.fromEntries(NUMBER_FIELDS.map(each => [each.field, textOf(pair, each, 'metric')]));
      expect(applyDraft(pair, typed, 'metric')).toEqual({ ok: true, pair });
    }
  });

  it('takes units as typed', () => {
    const result = applyDraft(larch, { lengthMm: '156 cm', 'edges.baseBevelDeg': '0.7' }, 'metric');
    expect(result.ok && result.pair.lengthMm).toBe(1560);
    expect(result.ok && result.pair.edges).toEqual({ ...larch.edges, baseBevelDeg: 0.7 });
  });

  it('names the field, what was found and what is accepted', () => {
    const wide = applyDraft(larch, { waistWidthMm: '130' }, 'metric');
    expect(!wide.ok && wide.messages.waistWidthMm).toBe(
      `Waist: 130 is wider than Tip ${larch.tipWidthMm}; the waist must be the narrowest`,
    );
    const word = applyDraft(larch, { waistWidthMm: 'narrow' }, 'metric');
    expect(!word.ok && word.messages.waistWidthMm).toMatch(
      /"narrow" is not accepted; accepted is a number in mm/,
    );
    const empty = applyDraft(larch, { lengthMm: '' }, 'metric');
    expect(!empty.ok && empty.messages.lengthMm).toMatch(/: is missing/);
    const nameless = applyDraft(larch, { name: '' }, 'metric');
    expect(!nameless.ok && nameless.messages.name).toMatch(/^Name: /);
  });

  it('says what was typed where the file would hold it in another unit', () => {
    const inches = applyDraft(larch, { camberMm: '6.5in' }, 'metric');
    expect(!inches.ok && inches.messages.camberMm).toBe(
      'Camber: 165.1 is not accepted; accepted is a number from 0 to 40 mm ("6.5in" was typed)',
    );
    const comma = applyDraft(larch, { camberMm: '66,5' }, 'metric');
    expect(!comma.ok && comma.messages.camberMm).toBe(
      'Camber: 66.5 is not accepted; accepted is a number from 0 to 40 mm',
    );
    const imperial = applyDraft(larch, { camberMm: '4' }, 'imperial');
    expect(!imperial.ok && imperial.messages.camberMm).toMatch(/^Camber: 101\.6 .*\("4" was typed\)$/);
  });

  it('tells every field at fault at once', () => {
    const result = applyDraft(
      larch,
      { waistWidthMm: 'narrow', camberMm: '99', 'bending.kind': 'stations', 'bending.text': '0 40\n680' },
      'metric',
    );
    expect(!result.ok && Object.keys(result.messages).sort()).toEqual([
      'bending',
      'camberMm',
      'waistWidthMm',
    ]);
    const formula = { 'torsion.kind': 'formula', 'torsion.text': '0', waistWidthMm: 'narrow' };
    const both = applyDraft(larch, formula, 'metric');
    expect(!both.ok && Object.keys(both.messages).sort()).toEqual(['torsion', 'waistWidthMm']);
  });

  it('names one field where a boot centre is out of place', () => {
    const far = applyDraft(larch, { bootCentreFromTailMm: '165 cm' }, 'metric');
    expect(!far.ok && Object.keys(far.messages)).toEqual(['bootCentreFromTailMm']);
  });

  it.each(['abc', '0', '-5', '66,5', '165 cm', 's +', '1/0', ''])('refuses the formula %o', text => {
    const typed = { 'torsion.kind': 'formula', 'torsion.text': text };
    const result = applyDraft(larch, typed, 'metric');
    expect(!result.ok && result.messages.torsion).toMatch(/^torsion(\.newtonM2)?: .*accepted/);
  });

  it('reads stations with decimal commas, and apart by comma, semicolon or space', () => {
    const written = '0 40,5\n340; 120,25\n680, 260\n1000,200\n1360 : 62.5';
    const result = applyDraft(larch, { 'bending.kind': 'stations', 'bending.text': written }, 'metric');
    const { bending } = result.ok ? result.pair : larch;
    expect(bending?.kind === 'stations' && bending.stations.map(Object.values)).toEqual([
      [0, 40.5],
      [340, 120.25],
      [680, 260],
      [1000, 200],
      [1360, 62.5],
    ]);
  });

  it('drops an optional field that is emptied', () => {
    const result = applyDraft(
      larch,
      { camberMm: '', 'edges.baseBevelDeg': '', 'edges.sideAngleDeg': '' },
      'metric',
    );
    expect(result.ok && 'camberMm' in result.pair).toBe(false);
    expect(result.ok && 'edges' in result.pair).toBe(false);
  });

  it('takes a plate once all of it is given, and names what is missing until then', () => {
    const begun = applyDraft(larch, { 'plate.fromTailMm': '390' }, 'metric');
    expect(!begun.ok && begun.messages).toEqual({
      'plate.lengthMm': 'Plate length: is missing; accepted is a number from 100 to 1200 mm',
      'plate.newtonM2': 'Plate adds to EI: is missing; accepted is a number from 0 to 20000 N·m²',
    });
    const typed = { 'plate.fromTailMm': '390', 'plate.lengthMm': '48 cm', 'plate.newtonM2': '60' };
    const whole = applyDraft(larch, typed, 'metric');
    const plate = { fromTailMm: 390, lengthMm: 480, newtonM2: 60 };
    expect(whole.ok && whole.pair.plate).toEqual(plate);
    const emptied = Object.fromEntries(Object.keys(typed).map(field => [field, '']));
    const off = applyDraft({ ...larch, plate }, emptied, 'metric');
    expect(off).toEqual({ ok: true, pair: larch });
  });

  it('names the plate that reaches past the ski by its label', () => {
    const plate = { fromTailMm: 1000, lengthMm: 480, newtonM2: 60 };
    const long = applyDraft({ ...larch, plate }, { 'plate.lengthMm': '500' }, 'metric');
    expect(!long.ok && long.messages['plate.lengthMm']).toBe(
      'Plate length: 500 from 1000 reaches past Contact length 1360; at most 360 mm fits',
    );
  });

  it('reads stiffness as number, stations and formula, and complains by line', () => {
    const uniform = applyDraft(larch, { 'bending.kind': 'uniform', 'bending.text': '250' }, 'metric');
    expect(uniform.ok && uniform.pair.bending).toEqual({ kind: 'uniform', newtonM2: 250 });
    const stations = applyDraft(
      larch,
      { 'bending.kind': 'stations', 'bending.text': '0 60\n680; 250\n1360, 55' },
      'metric',
    );
    expect(stations.ok && stations.pair.bending).toMatchObject({ stations: [{}, { fromTailMm: 680 }, {}] });
    const bad = applyDraft(larch, { 'bending.kind': 'stations', 'bending.text': '0 60\nhalf 200' }, 'metric');
    expect(!bad.ok && bad.messages.bending).toMatch(/line 2 "half 200" found/);
    const none = applyDraft(larch, { 'torsion.kind': 'none', 'torsion.text': '' }, 'metric');
    expect(none.ok && none.pair.torsion).toBeUndefined();
  });

  it('keeps fields it does not know', () => {
    const carried = { ...larch, waxedWith: 'cold' };
    const result = applyDraft(carried, { waistWidthMm: '65.5' }, 'metric');
    expect(result.ok && result.pair).toMatchObject({ waxedWith: 'cold', waistWidthMm: 65.5 });
  });
});

describe('comparisons', () => {
  it('offers slalom against giant slalom from the demo rack', () => {
    const [first] = comparisonsOf(demoEntries());
    const rack = demoEntries();
    expect(first!.question).toBe('edge');
    expect(first!.ids.map(id => rack.find(entry => entry.id === id)!.pair.discipline)).toEqual(['SL', 'GS']);
  });

  it('offers none where the pairs are missing', () => {
    expect(comparisonsOf([])).toEqual([]);
  });
});
