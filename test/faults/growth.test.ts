import { afterAll, beforeAll, expect, test } from 'vitest';
import { readGates } from '../../core/course/index.ts';
import { readBenchTable } from '../../core/flex/index.ts';
import { compileFormula } from '../../core/formula/index.ts';
import { identify } from '../../core/kind/index.ts';
import { readPair, readRack, writeRack } from '../../core/pair/index.ts';
import { readEdition } from '../../core/rules/index.ts';
import { readEdges, readProfile } from '../../core/run/index.ts';
import { decodeText } from '../../core/table/index.ts';
import { faultSheet, lookOver } from '../../renderer/files/import-sheet.ts';
import { READ } from '../../renderer/files/reading.ts';
import { larch } from '../core/pair/larch.ts';
import { readOrRefused } from './support/cases.ts';
import { startCounting } from './support/steps.ts';

let counting: Awaited<ReturnType<typeof startCounting>>;
beforeAll(async () => {
  counting = await startCounting();
});
afterAll(() => counting.stop());

/** Lengths compared, of whatever is repeated. */
const SHORT = 250;
const TIMES = 4;
/** Four times the text may take this many times the steps: as its length, and a little for sorting. */
const MOST = 4.6;

const rows = (heading: string, row: (at: number) => string) => (n: number) =>
  `${heading}\n${Array.from({ length: n }, (_, at) => `${row(at)}\n`).join('')}`;

/** Texts that could take a reader long, by how often something is repeated. */
const LONG: Readonly<Record<string, (n: number) => string>> = {
  'equal headings': n => `${'name,'.repeat(n)}\n${'x,'.repeat(n)}\n`,
  'headings of a set': n => `across,down${',note'.repeat(n)}\n${'1,2'.padEnd(n, ',x')}\n`,
  'headings nobody knows': n => `${Array.from({ length: n }, (_, at) => `column${at}`).join(';')}\n1;2\n`,
  'quotes left open': n => `name,length\n${'"open,1\n'.repeat(n)}`,
  'quotes in one line': n => `name,length\n${'"a"b'.repeat(n)}\n`,
  'pairs of quotes': n => `name,length\n"${'""'.repeat(n)}`,
  'brackets in a heading': n => `${'('.repeat(n)},across,down\n1,2,3\n`,
  separators: n => `across,down\n${','.repeat(n)}\n`,
  'empty lines': n => `${'\n'.repeat(n)}across,down\n1,2\n`,
  remarks: n => `${'# a,b,c\n'.repeat(n)}across,down\n1,2\n`,
  spaces: n => `across,down\n${' '.repeat(n)}1,2\n`,
  digits: n => `across,down\n${'1'.repeat(n)},2\n`,
  'grouped digits': n => `across,down\n${'1.'.repeat(n)},2\n`,
  gates: rows('gate,across,down,note', at => `${at},${(at % 2) * 3},${at * 10},n${at}`),
  'gates that are none': rows('gate,across,down', at => `${at},wide,far`),
  'gates with cells of their own': rows('gate,across,down', at => `${at},1,${at},${at}`),
  'pairs of a sheet': rows(
    'name,length,contact length,tip,waist,tail',
    at => `Ski ${at},1550,1360,117,66,104`,
  ),
  'pairs of a sheet that are none': rows(
    'name,length,contact length,tip,waist,tail',
    at => `Ski ${at},x,y,"z`,
  ),
  ground: rows('distance,height', at => `${at},${-0.1 * at}`),
  'ground that goes back': rows('distance,height', at => `${-at},0`),
  turns: rows('time,edge', at => `${at},${at % 2 ? 40 : -40}`),
  readings: rows('loadAtMm,loadN,dialAtMm,deflectionMm', at => `${at + 1},100,300,1`),
  'lists in lists': n => `{"format":"turnwright.rack","pairs":${'['.repeat(n)}${']'.repeat(n)}}`,
  'objects in objects': n => `${'{"a":'.repeat(n)}1${'}'.repeat(n)}`,
  keys: n => `{${Array.from({ length: n }, (_, at) => `"k${at % 50}":${at}`).join(',')}}`,
  'large numbers': n => `{"format":"turnwright.pair","n":[${'12345678901234567891,'.repeat(n)}1]}`,
  'digits of one number': n => `{"format":"turnwright.pair","n":${'9'.repeat(n)}}`,
  escapes: n => `{"format":"turnwright.pair","name":"${'\\u00e9'.repeat(n)}"}`,
  'racked pairs': n => JSON.stringify({ format: 'turnwright.rack', version: 1, pairs: Array(n).fill(larch) }),
  'racked pairs that are none': n =>
    JSON.stringify({ format: 'turnwright.rack', version: 1, pairs: Array(n).fill({}) }),
  limits: n =>
    JSON.stringify({ format: 'turnwright.rules', version: 1, edition: 'x', limits: Array(n).fill({}) }),
};

const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  identify: text => identify(text, 'x'),
  gates: readGates,
  sheet: text => faultSheet(lookOver('x.csv', READ.sheet(text), [])),
  slope: text => readOrRefused(() => readProfile(text)),
  programme: text => readOrRefused(() => readEdges(text)),
  bench: text => readBenchTable(text, 1.36),
  pair: readPair,
  rack: text => {
    const read = readRack(text);
    return read.ok && writeRack(read.rack);
  },
  edition: text => readOrRefused(() => readEdition(text)),
  formula: text => readOrRefused(() => compileFormula(text, 's')),
  bytes: text => decodeText(new TextEncoder().encode(text)),
};

/** Readers of JSON are given what begins like it, readers of tables the rest. */
const JSON_READERS = ['identify', 'pair', 'rack', 'edition', 'bytes'];
const TABLE_READERS = ['identify', 'gates', 'sheet', 'slope', 'programme', 'bench', 'formula'];

test.each(Object.keys(READERS))('%s: no text takes more steps than its length is good for', async name => {
  const read = READERS[name]!;
  const slow: string[] = [];
  for (const [what, text] of Object.entries(LONG)) {
    // A row of another kind of table is the same six faults for a sheet, whichever kind it is.
    if (name === 'sheet' && /^(gates|ground|turns|readings)/.test(what)) continue;
    if (!(/^[{[]/.test(text(1)) ? JSON_READERS : TABLE_READERS).includes(name)) continue;
    const few = await counting.stepsOf(() => read(text(SHORT)));
    const many = await counting.stepsOf(() => read(text(SHORT * TIMES)));
    if (many > MOST * few) slow.push(`${what}: ${few} steps grow to ${many}`);
  }
  expect(slow).toEqual([]);
});

test('steps are counted: what is quadratic is seen as such', async () => {
  const text = (n: number) => 'name,length\n'.padEnd(n, 'x');
  const again = (n: number) => () => {
    for (let at = 0; at < n; at++) readBenchTable(text(n), 1);
  };
  const quadratic = (n: number) => () => {
    for (let at = 0; at < n; at++) again(n)();
  };
  expect(await counting.stepsOf(again(40))).toBeGreaterThan(40);
  expect((await counting.stepsOf(quadratic(20))) / (await counting.stepsOf(quadratic(5)))).toBeGreaterThan(
    MOST,
  );
});
