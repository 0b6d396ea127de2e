import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPair } from '../../core/pair/index.ts';
import { calc } from '../../main/calc/command-line.ts';
import { commands } from '../../main/calc/commands.ts';
import { conditionOptions } from '../../main/calc/condition-options.ts';
import { InputFault } from '../../main/calc/fault.ts';
import { changedPair, numberFields, readAxis, rowCount, valuesAt } from '../../main/calc/vary.ts';
import { larch } from '../core/pair/larch.ts';
import { finite, harmedText, runs } from './support/cases.ts';

/** What a script may write behind an option: values of every kind, with right and wrong units, and none. */
const VALUE = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      '45',
      '300',
      '0.2',
      '-20',
      '1.2m',
      '12 cm',
      '40 km/h',
      '10 m/s',
      '14°',
      '25%',
      '1200 N',
      '70kg',
      '5 cm',
      '3 lb',
    ),
  },
  fc.constantFrom(
    '',
    ' ',
    ',',
    '1,',
    ',1',
    '1,2,3',
    '1e3',
    '1e999',
    '-1e999',
    'NaN',
    'Infinity',
    '0x10',
    '1_0',
    '--',
    '-',
    '-h',
    '--json',
    '=',
    '=5',
  ),
  fc.constantFrom(
    'soft',
    'ice',
    'groove',
    'cosine',
    'men',
    'SL',
    'GS',
    '__proto__',
    'constructor',
    'toString',
    '\u001b[2J',
    '\u202e5',
    '５',
    'x'.repeat(5000),
    '9'.repeat(400),
  ),
  fc.double({ noNaN: false }).map(String),
  fc.string({ maxLength: 6 }),
);

/** Commands that solve anything are given what they have to refuse, which they do after their options. */
const ANSWERED = ['shape', 'check'];

const line = fc
  .constantFrom(
    ...Object.keys(commands).filter(name => name !== 'sweep'),
    '__proto__',
    'constructor',
    'help',
    '',
  )
  .chain(name => {
    const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
    const own = command
      ? [...Object.keys(command.options), ...Object.keys(conditionOptions(command.conditions ?? []))]
      : [];
    const option = fc.constantFrom(
      ...own,
      'json',
      'csv',
      'working',
      'nothing',
      '__proto__',
      'edge',
      '',
      '-x',
      'no-json',
    );
    const word = fc.oneof(
      {
        weight: 5,
        arbitrary: fc
          .tuple(option, VALUE, fc.boolean())
          .map(([key, value, joined]) => (joined ? [`--${key}=${value}`] : [`--${key}`, value])),
      },
      option.map(key => [`--${key}`]),
      VALUE.map(value => [value]),
    );
    return fc
      .tuple(fc.array(word, { maxLength: 4 }), fc.boolean())
      .map(([words, named]) => [name, ...(named ? ['-'] : []), ...words.flat()]);
  });

const unbent = { ...larch, bending: { kind: 'formula', newtonM2: 'x' } };
const readings = 'loadAtMm,loadN,dialAtMm,deflectionMm\n300,100,300,2.1\n';

async function reported(argv: readonly string[], stdin: string) {
  let out = '';
  let err = '';
  const code = await calc(argv, {
    out: text => {
      out += text;
    },
    err: text => {
      err += text;
    },
    stdin: async () => new TextEncoder().encode(stdin),
  });
  return { code, out, err };
}

test('whatever stands on the command line is answered, or refused in one line', async () => {
  await fc.assert(
    fc.asyncProperty(line, async argv => {
      const given =
        argv[0] === 'identify' ? readings : JSON.stringify(ANSWERED.includes(argv[0]!) ? larch : unbent);
      const { code, out, err } = await reported(argv, given);
      if (code === 0) {
        if (argv.includes('--json') && !out.startsWith('turnwright ')) JSON.parse(out);
        return;
      }
      expect({ argv, code, out }).toEqual({ argv, code: 2, out: '' });
      // One line, which a terminal shows as it is; what had to be noted stands before it.
      if (!err.endsWith('\n') || /undefined|\[object| at .*\.ts:/.test(err)) expect.fail(err);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be there
      if (/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/.test(err)) expect.fail(err);
    }),
    runs(),
  );
});

test('whatever a file holds, its command answers or names the file and its field', async () => {
  await fc.assert(
    fc.asyncProperty(harmedText(JSON.stringify(larch), readings), async stdin => {
      const { code, out, err } = await reported(['shape', '-', '--json'], stdin);
      if (code === 0) JSON.parse(out);
      else {
        expect({ code, out }).toEqual({ code: 2, out: '' });
        // What had to be noted stands before it.
        expect(err).toMatch(/^([^\n]+\n)?(-|standard input): [^\n]+\n$/);
      }
    }),
    runs(0.25),
  );
});

test('a range that is varied has as many values as it says, or is refused', () => {
  const number = fc.oneof(VALUE, fc.integer({ min: -99, max: 999 }).map(String));
  const axis = fc
    .tuple(
      fc.constantFrom('waistWidthMm', 'edge', 'bending.stations[0].newtonM2', '', '__proto__', 'a b'),
      number,
      number,
      number,
    )
    .map(([field, from, to, step]) => `${field}=${from}:${to}:${step}`);
  fc.assert(
    fc.property(fc.oneof({ weight: 4, arbitrary: axis }, harmedText('waistWidthMm=60:70:1')), text => {
      let read: ReturnType<typeof readAxis>;
      try {
        read = readAxis(text);
        rowCount([read]);
      } catch (error) {
        if (!(error instanceof InputFault)) throw error;
        return;
      }
      expect(read.count).toBeGreaterThanOrEqual(1);
      for (const row of [0, Math.floor(read.count / 2), read.count - 1]) {
        if (!finite(valuesAt([read], row))) expect.fail(text);
      }
    }),
    runs(),
  );
});

test('a pair with any of its numbers changed is one, or is refused', () => {
  const fields = numberFields(larch);
  fc.assert(
    fc.property(
      fc.constantFrom(...fields),
      fc.oneof(fc.double(), fc.double({ min: 0, max: 2000 })),
      (field, value) => {
        try {
          const changed = changedPair(larch as never, new Map([[field, value]]));
          if (checkPair(changed).length > 0) expect.fail(`${field} ${value}`);
        } catch (error) {
          if (!(error instanceof InputFault)) throw error;
        }
      },
    ),
    runs(0.25),
  );
});
