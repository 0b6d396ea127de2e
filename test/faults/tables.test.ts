import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Gate, readGates, writeGates } from '../../core/course/index.ts';
import { identify, readBenchTable } from '../../core/flex/index.ts';
import { checkPair } from '../../core/pair/index.ts';
import { readEdges, readProfile } from '../../core/run/index.ts';
import { readCsvRows } from '../../core/table/index.ts';
import { faultSheet, lookOver } from '../../renderer/files/import-sheet.ts';
import { READ } from '../../renderer/files/reading.ts';
import { finite, harmedText, readOrRefused, runs, same, tellsWell } from './support/cases.ts';

const demo = (name: string) => readFileSync(new URL(`../../renderer/demo/${name}`, import.meta.url), 'utf8');

/** Columns of other headings may change places. */
const inOrder = (gate: Gate): Gate =>
  gate.others
    ? { ...gate, others: gate.others.toSorted(([one], [other]) => (one < other ? -1 : one > other ? 1 : 0)) }
    : gate;

test('gates: every row is a gate or a fault, and a set comes back as it was', () => {
  const texts = [
    demo('sets/slalom.csv').split('\n').slice(0, 8).join('\n'),
    '# Pala\n#;across;down;turn;slope\n1;2,5;12;left;14°\n2;-2,5;24;right;14°\n',
    'gate,across (cm),down (m),colour,kept speed,note\n1,150,10,red,40 km/h,"a,b"\n2,-150,20,blue,,=x\n',
  ];
  fc.assert(
    fc.property(harmedText(...texts), text => {
      const { gates, stated, problems } = readGates(text);
      problems.slice(0, 20).forEach(tellsWell);
      expect(finite(gates)).toBe(true);
      const again = readGates(writeGates(gates, ',', stated));
      same(again.gates.map(inOrder), gates.map(inOrder));
      same(again.stated, stated);
    }),
    runs(),
  );
});

test('slope profile: ground a run can be on, or the lines at fault', () => {
  const texts = [
    'distance (m),height (m)\n0,100\n20,96\n45,88\n80,80\n',
    '# Pala\ndistance;altitude\n0;1820,5\n10;1818\n30;1811,25 # crest\n',
  ];
  fc.assert(
    fc.property(harmedText(...texts), text => {
      const read = readOrRefused(() => readProfile(text));
      if ('faults' in read) {
        read.faults.slice(0, 20).forEach(tellsWell);
        return;
      }
      const { length, sine, height, curvature, horizontal, along } = read.value;
      expect(length).toBeGreaterThan(0);
      for (const share of [-0.1, 0, 0.3, 0.77, 1, 1.2]) {
        const y = share * length;
        expect(Math.abs(sine(y))).toBeLessThan(1);
        expect(finite([height(y), curvature(y)])).toBe(true);
        // Points a thousandth apart at a kilometre are told apart to a few digits only.
        expect(Math.abs(along(horizontal(y)) - y)).toBeLessThan(1e-6 * (length + Math.abs(horizontal(y))));
      }
    }),
    runs(),
  );
});

test('programme of turns: edge angles within 90° at every time, or the lines at fault', () => {
  const texts = ['time (s),edge (deg)\n0,0\n0.5,45\n1,0\n1.5,-45\n2,0\n', 't;edge\n0;-3,5\n2;60\n'];
  fc.assert(
    fc.property(harmedText(...texts), text => {
      const read = readOrRefused(() => readEdges(text));
      if ('faults' in read) {
        read.faults.slice(0, 20).forEach(tellsWell);
        return;
      }
      const { end, edge, changeovers } = read.value;
      expect(end).toBeGreaterThan(0);
      for (const share of [0, 0.2, 0.5, 0.9, 1])
        expect(Math.abs(edge(share * end))).toBeLessThan(Math.PI / 2);
      expect(finite(changeovers)).toBe(true);
      for (const at of changeovers) expect(at >= 0 && at <= end).toBe(true);
    }),
    runs(),
  );
});

test('bench readings: numbers with their units, and a profile or the reading at fault', () => {
  const row = '300,100,300,2.1\n600,100,600,5.3\n900,15.3 kg,700,0.51 cm\n680,200,680,9.9\n';
  const texts = [
    `loadFromTailMm,loadN,dialFromTailMm,deflectionMm\n${row}`,
    'loadAtMm;loadN;dialAtMm;deflectionMm;rearSupportMm;frontSupportMm\n300;100;300;5,31;0;1360\n700;100;700;7,2;10;1300\n',
  ];
  let identified = 0;
  fc.assert(
    fc.property(harmedText(...texts), text => {
      const read = readBenchTable(text, 1.36);
      if (!read.ok) {
        tellsWell(read.fault);
        return;
      }
      expect(finite(read.readings)).toBe(true);
      // Solving costs much more than reading; a share of those that were read is enough.
      if (read.readings.length > 12 || identified++ % 10 > 0) return;
      const found = readOrRefused(() => identify(read.readings, { length: 1.36 }));
      if ('faults' in found) found.faults.forEach(tellsWell);
      else {
        for (const { newtonM2, low, high } of found.value.stations) {
          expect(0 < newtonM2 && newtonM2 < Infinity && low >= 0 && low <= newtonM2 && newtonM2 <= high).toBe(
            true,
          );
        }
      }
    }),
    runs(),
  );
});

test('sheet: every row is a pair or a fault, and the faults make a sheet that says the same', () => {
  const texts = [
    demo('ostrelle-squad.csv').split('\n').slice(0, 5).join('\n'),
    'Winter stock\n\nowner;ski;length (cm);contact length (cm);tip;waist;tail;side angle\nZoë;Lärche;165;145;117;66,5;104;87\n',
    'name,length,contact length,tip,waist,tail,notes\nLarch,1550 mm,1360,117,66,104,"as new, blue"\nBirch,193 cm,170 cm,100,66,84,\n',
  ];
  fc.assert(
    fc.property(harmedText(...texts), text => {
      const read = READ.sheet(text);
      const { sheet } = read;
      sheet.problems.slice(0, 20).forEach(tellsWell);
      for (const { pair } of sheet.pairs) same(checkPair(pair), []);
      const reported = new Set([...sheet.pairs, ...sheet.problems, ...sheet.guesses].map(({ row }) => row));
      const headed = sheet.columns.some(column => column.field !== null);
      const rows = readCsvRows(text, sheet.separator).rows.map(({ line }) => line);
      expect(rows.filter(line => !reported.has(line)).length).toBeLessThanOrEqual(headed ? 1 : 0);
      // As it stands in the page, with what is saved of it.
      const looked = lookOver('squad.csv', read, []);
      const faults = readCsvRows(faultSheet(looked), sheet.separator).rows;
      expect(faults.length).toBeGreaterThanOrEqual(
        new Set(sheet.problems.map(({ row }) => row)).size > 0 ? 2 : 1,
      );
    }),
    runs(),
  );
});
