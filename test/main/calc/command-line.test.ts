// @module-tag slow
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { text } from 'node:stream/consumers';
import { describe, expect, test } from 'vitest';
import { commands } from '../../../main/calc/commands.ts';
import { file, json, larch, run, write } from './drive.ts';

describe('the command line', () => {
  test.each([
    [['nothing'], /command: "nothing" is not known; give one of shape, /],
    [['shape'], /shape: 0 files given; it takes 1/],
    [['shape', '/nowhere.pair.json'], /nowhere\.pair\.json: could not be read: no such file/],
    [['shape', 'FILE', '--jsn'], /Unknown option '--jsn'; accepted options are --json/],
    [['bend', 'FILE', '--load'], /^--load: has no value; give --load VALUE$/m],
    [['bend', 'FILE', '--load', '--csv'], /^--load: has no value; give --load VALUE$/m],
    [['bend', 'FILE', '--json=yes'], /^--json: takes no value; give --json alone$/m],
    [['shape', 'FILE', '--json', '--csv'], /--csv: not together with --json/],
    [['bend', 'FILE', '--load', '100,heavy'], /--load: "heavy" is not accepted; give 0 to 20000 N/],
    [['bend', 'FILE', '--span', '9000'], /--span: "9000" is not accepted; give 1 to 1360 mm/],
    [['bend', 'FILE', '--load', '300,5 cm'], /--load: "5 cm" is not accepted; give 0 to 20000 N/],
    [['bend', 'FILE', '--span', '2 m'], /--span: "2 m" is not accepted; give 1 to 1360 mm/],
    [['vibrate', 'FILE', '--modes', '2.5'], /--modes: "2.5" is not accepted; give a whole number/],
    [['check', 'FILE', '--category', 'seniors'], /--category: "seniors" is not accepted; give one of men/],
    [['carve', 'FILE', '--snow', '1,10'], /--snow: "1,10" is not accepted; give soft, .* 0.04 to 90 N/],
    [['carve', 'FILE', '--snow', 'slush'], /--snow: "slush" is not accepted; give soft, groomed/],
    [['sweep', 'FILE', '--vary', 'waist=1:2:1'], /--vary: waist is no number of .*give lengthMm/],
    [['sweep', 'FILE', '--vary', 'waistWidthMm=2:1:1'], /--vary: "waistWidthMm=2:1:1" is not accepted/],
    [['identify', 'FILE'], /--contact-length: is missing/],
  ])('%j is an input fault told in one line', async (argv, message) => {
    const { code, out, err } = await run(argv.map(each => (each === 'FILE' ? file : each)));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err.trimEnd()).not.toContain('\n');
  });

  test('a faulty field is named with its file', async () => {
    const faulty = await write('faulty.pair.json', { ...larch, waistWidthMm: 130 });
    const { code, err } = await run(['shape', faulty]);
    expect(code).toBe(2);
    expect(err).toContain('faulty.pair.json: waistWidthMm');
    expect(err).toContain('130');
  });

  test('what the pair does not state is asked for, not guessed', async () => {
    const { bending: _, ...limp } = larch;
    const { code, err } = await run(['bend', await write('limp.pair.json', limp)]);
    expect(code).toBe(2);
    expect(err).toContain('limp.pair.json: this question needs a stiffness profile');
  });

  test('a file may come from standard input', async () => {
    const { code, out } = await run(['shape', '-', '--json'], JSON.stringify(larch));
    expect(code).toBe(0);
    expect(JSON.parse(out).name).toBe('Larch 155');
  });

  test('every command has help that lists its options', async () => {
    for (const [name, { options }] of Object.entries(commands)) {
      const { code, out } = await run([name, '--help']);
      expect(code).toBe(0);
      for (const option of Object.keys(options)) expect(out).toContain(`--${option}`);
    }
    for (const argv of [[], ['--help'], ['-h']]) {
      expect((await run(argv)).out).toContain('turnwright COMMAND FILE');
    }
  });

  test('--working adds the workings to the document and to the tables', async () => {
    expect((await json('shape', file)).workings).toBeUndefined();
    const { workings } = await json('shape', file, '--working');
    expect(workings[0]).toMatchObject({ key: 'shape.depth', source: expect.any(String) });
    expect((await run(['shape', file, '--working'])).out).toContain('Source:');
    const { out } = await run(['shape', file, '--csv']);
    const table = await run(['shape', file, '--csv', '--working']);
    expect(table).toEqual({
      code: 0,
      out,
      err: expect.stringContaining('--working: a table as CSV carries none'),
    });
  });

  test.each([
    [['bend', 'FILE', '--load', '100', '--load', '200'], /^--load: is given 2 times; give it once/],
    [['bend', 'FILE', '--load', ','], /^--load: "" is not accepted/],
    [['bend', 'FILE', '--load', '-5'], /^--load: "-5" is not accepted; give 0 to 20000 N/],
    [['bend', 'FILE', '--load', '0x10'], /^--load: "0x10" is not accepted/],
    [['bend', 'FILE', '--load', '1e999'], /^--load: "1e999" is not accepted/],
    [
      ['bend', 'FILE', '--span', '100', '--at', '5'],
      /^--at: 5 mm is not between the supports; .*630 and 730 mm/,
    ],
    [['carve', 'FILE', '--rebound', '2'], /^--rebound: "2" is not accepted; give 0.05 to 1 mm/],
    [['carve', 'FILE', '--fore', '600'], /^--fore: "600" is not accepted; give -340 to 340 mm/],
    [['run', 'FILE', '--start-speed', '0'], /^--start-speed: "0" is not accepted; give 1.8 to 200 km\/h/],
    [['shape', tmpdir()], /: could not be read: a folder has that name\n$/],
  ])('%j is refused by the name of the option, in its unit', async (argv, message) => {
    const { code, out, err } = await run(argv.map(each => (each === 'FILE' ? file : each)));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
  });

  test('a number with a minus sign is the value of the option before it', async () => {
    const [aft] = (await json('carve', file, '--edge', '45', '--fore', '-30')).points;
    const [joined] = (await json('carve', file, '--edge', '45', '--fore=-30')).points;
    expect(aft).toEqual(joined);
  });

  test.each(['', 'hello', '[1, 2]', 'null', '"x"', '12', '{', '[['.repeat(50_000)])(
    'a file that holds %j is an input fault',
    async held => {
      const { code, out, err } = await run(['shape', await write('held.pair.json', held)]);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(/held\.pair\.json: file: .*\n$/);
    },
  );

  test('a value may carry a unit of its own', async () => {
    const plain = await json('bend', file, '--span', '1200', '--load', '300,400');
    expect(await json('bend', file, '--span', '1.2 m', '--load', '300N,0.4kN')).toEqual(plain);
  });

  test('a byte-order mark does no harm', async () => {
    const marked = await write('marked.pair.json', `\uFEFF${JSON.stringify(larch)}`);
    expect(await json('shape', marked)).toEqual(await json('shape', file));
  });

  test('a file of a newer version is answered, with a word on standard error', async () => {
    const { code, out, err } = await run([
      'shape',
      await write('newer.pair.json', { ...larch, version: 2 }),
      '--json',
    ]);
    expect(code).toBe(0);
    expect(JSON.parse(out).name).toBe('Larch 155');
    expect(err).toMatch(/newer\.pair\.json: Larch 155: written by a newer version \(2\)/);
  });

  test('control characters of a name do not reach the terminal', async () => {
    const name = 'Larch\u001B[31m\n155';
    const { out } = await run(['shape', await write('odd.pair.json', { ...larch, name })]);
    expect(out.split('\n')[0]).toMatch(/^Larch\uFFFD\[31m 155 \(/);
  });

  test('a reader that closes the pipe ends the program without a word', async () => {
    const args = ['--import', 'tsx', 'main/calc/calc.ts', 'shape', file];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.destroy();
    const [said, [code]] = await Promise.all([text(child.stderr), once(child, 'exit')]);
    expect({ said, code }).toEqual({ said: '', code: 0 });
  });
});
