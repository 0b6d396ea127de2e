import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { identify, textKinds } from '../../core/kind/index.ts';
import { say } from '../../core/language/index.ts';
import { checkPair, readPair, readRack, skiOf, writePair, writeRack } from '../../core/pair/index.ts';
import { editionSchema, readEdition, season2024 } from '../../core/rules/index.ts';
import { demoPairs } from '../../renderer/demo/index.ts';
import { least } from '../core/pair/larch.ts';
import { finite, harmedJson, harmedText, readOrRefused, runs, same, tellsWell } from './support/cases.ts';

const pairs = [...demoPairs, least].map(pair => JSON.stringify(pair, null, 1));
const rack = JSON.stringify({
  format: 'turnwright.rack',
  version: 1,
  owner: 'Ostrelle',
  pairs: [least, { name: 'not a pair' }],
  tuneLog: [{ pairName: 'Larch 155', date: '2026-01-31', sideAngleDeg: 87, wax: 'hard', note: '' }],
  'x-own': { at: [1, { deep: null }] },
});
const edition = JSON.stringify({ ...season2024, limits: season2024.limits.slice(0, 4) });

test('a pair file is the whole pair or a list of its faults, and comes back as it was', () => {
  fc.assert(
    fc.property(fc.oneof(harmedText(...pairs), harmedJson(...pairs)), text => {
      const read = readPair(text);
      if (!read.ok) {
        expect(read.problems.length).toBeGreaterThan(0);
        read.problems.slice(0, 20).forEach(tellsWell);
        return;
      }
      same(checkPair(read.pair), []);
      for (const value of Object.values(skiOf(read.pair))) {
        if (value === undefined || Number.isNaN(value)) expect.fail(text);
      }
      const again = readPair(writePair(read.pair));
      same(again.ok && again.pair, read.pair);
    }),
    runs(),
  );
});

test('a rack keeps every item, readable or not, through a save', () => {
  fc.assert(
    fc.property(fc.oneof(harmedText(rack), harmedJson(rack)), text => {
      const read = readRack(text);
      if (!read.ok) {
        expect(read.problems.length).toBeGreaterThan(0);
        read.problems.slice(0, 20).forEach(tellsWell);
        return;
      }
      read.problems.slice(0, 20).forEach(tellsWell);
      const again = readRack(writeRack(read.rack));
      same(again.ok && again.rack, read.rack);
    }),
    runs(),
  );
});

test('limits are a whole edition or a list of its faults', () => {
  fc.assert(
    fc.property(fc.oneof(harmedText(edition), harmedJson(edition)), text => {
      const read = readOrRefused(() => readEdition(text));
      if ('faults' in read) {
        read.faults.slice(0, 20).forEach(tellsWell);
        return;
      }
      expect(editionSchema.safeParse(read.value).success).toBe(true);
      expect(finite(read.value)).toBe(true);
      same(readEdition(JSON.stringify(read.value)), read.value);
    }),
    runs(),
  );
});

test('whatever text it is, its kind is told or what was found in its place', () => {
  const squad = readFileSync(new URL('../../renderer/demo/ostrelle-squad.csv', import.meta.url), 'utf8');
  const texts = [pairs[0]!, rack, edition, squad, 'distance,height\n0,0\n', 'gate,across,down\n1,1,10\n'];
  fc.assert(
    fc.property(
      harmedText(...texts),
      fc.oneof(fc.constantFrom('a.json', 'b.csv', 'c.rack.json', ''), fc.string()),
      (text, name) => {
        const found = identify(text, name);
        if (found.ok) expect(textKinds).toContain(found.kind);
        else {
          tellsWell(found.fault);
          expect(say(found.fault)).toBeTruthy();
        }
      },
    ),
    runs(),
  );
});
