// Not among the tests of calc/, whose modules are loaded once for all: this one puts another language in their place.
import { expect, test, vi } from 'vitest';
import { file, larch, run, write } from './calc/drive.ts';

/** A language whose every text stands in marks, so that what did not come from it is seen. */
vi.mock('../../core/language/languages.ts', async original => {
  const { languages } = await original<typeof import('../../core/language/languages.ts')>();
  const texts = Object.entries(languages.en.texts).map(([key, text]) => [key, `‹${text}›`]);
  return { languages: { en: { ...languages.en, texts: Object.fromEntries(texts) } } };
});

/** What a person gave: the pair's name, and the command itself. */
const GIVEN = new RegExp(`${larch.name}|^turnwright \\w+ `);

/** What stands outside all marks, line by line: two words or more in a row. */
function bareWords(printed: string): string[] {
  let rest = printed;
  for (let before = ''; before !== rest; ) {
    before = rest;
    rest = rest.replace(/‹[^‹›]*›/g, '');
  }
  return rest.split('\n').filter(line => /\p{L}{2,}[,;:.]? \p{L}{2,}/u.test(line.replace(GIVEN, '')));
}

const { bending: _, ...limp } = larch;
const rigid = await write('limp.pair.json', limp);
const gates = ['--gates', '3', '--spacing', '10', '--offset', '2', '--turn', 'cosine'];

test.each([
  [['--help']],
  ...['shape', 'bend', 'vibrate', 'identify', 'carve', 'run', 'rhythm', 'set', 'check', 'sweep'].map(
    command => [[command, '--help']],
  ),
  [['shape', file, '--working']],
  [['bend', file, '--working']],
  [['vibrate', file, '--working']],
  [['carve', file, '--edge', '45', '--working']],
  [['check', file, '--working']],
  [['run', rigid, '--working']],
  [['rhythm', rigid, '--spacing', '10', '--offset', '2', '--working']],
  [['set', file, ...gates, '--speed', '20', '--working']],
  [['bend', rigid]],
  [['bend', file, '--load', 'heavy']],
  [['bend', file, '--at', '0']],
  [['set', file]],
  [['sweep', file, '--vary', 'waist=1:2:1']],
  [['shape', '/nowhere.pair.json']],
  [['nothing']],
])('every word of %j comes from core/language', async argv => {
  const { out, err } = await run(argv);
  expect(out + err).toContain('‹');
  expect(bareWords(out + err)).toEqual([]);
});

test('a text that did not come from there is seen', () => {
  expect(bareWords('‹spring on ‹two› supports›  42  N\nwhole base down  9  N')).toEqual([
    'whole base down  9  N',
  ]);
});
