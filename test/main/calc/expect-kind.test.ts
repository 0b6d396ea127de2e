import { expect, test } from 'vitest';
import { file, run, write } from './drive.ts';

const gates = await write('kinds-gates.csv', 'gate,across,down\n1,1,10\n2,-1,20\n');
const sheet = await write('kinds-sheet.csv', 'name,length,contact length,tip,waist,tail\n');
const bench = await write('kinds-bench.csv', 'loadAtMm,loadN,dialAtMm,deflectionMm\n300,100,300,5\n');

test.each([
  [['shape', gates], `${gates}: a set of gates found; accepted: a pair\n`],
  [['shape', sheet], `${sheet}: a sheet of pairs found; accepted: a pair\n`],
  [['set', file, '--course', file], `${file}: a pair found; accepted: a set of gates\n`],
  [['check', file, '--edition', file], `${file}: a pair found; accepted: an edition of limits\n`],
  [
    ['identify', gates, '--contact-length', '1360'],
    `${gates}: a set of gates found; accepted: bench readings\n`,
  ],
  [['bend', bench], `${bench}: bench readings found; accepted: a pair\n`],
])('a file of another kind is refused by name: %j', async (argv, err) => {
  expect(await run([...argv])).toEqual({ code: 2, out: '', err });
});

test('bench readings are taken under the names the page takes', async () => {
  const rows = ['loadAtMm;loadN;dialAtMm;deflectionMm'];
  for (const at of [300, 500, 700, 900, 1100]) rows.push(`${at};100;${at};5,31`);
  const short = await write('short-names.csv', rows.join('\n'));
  const long = await write('long-names.csv', rows.join('\n').replaceAll('AtMm', 'FromTailMm'));
  const [one, other] = await Promise.all(
    [short, long].map(each => run(['identify', each, '--contact-length', '1360', '--json'])),
  );
  expect(one).toMatchObject({ code: 0, err: '' });
  expect(one.out).toBe(other.out);
});
