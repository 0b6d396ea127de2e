import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGates, rhythmicSet, writeGates } from '../../../core/course/index.ts';
import { say } from '../../../core/language/index.ts';

describe('readGates', () => {
  it('reads headings with units, decimal commas, a byte-order mark and any order', () => {
    const { gates, problems } = readGates(
      '\uFEFFColour;Down (m);Across (cm);Gate\r\nred;10,5;-150;a\r\nblue;21;150;b\r\n',
    );
    expect(problems).toEqual([]);
    expect(gates).toEqual([
      { label: 'a', x: -1.5, y: 10.5, colour: 'red', turn: null },
      { label: 'b', x: 1.5, y: 21, colour: 'blue', turn: null },
    ]);
  });

  it('numbers gates without a name and sorts them down the hill', () => {
    const { gates } = readGates('across,down\n1,30\n-1,20\n');
    expect(gates.map(gate => gate.y)).toEqual([20, 30]);
    expect(gates.map(gate => gate.label)).toEqual(['2', '1']);
  });

  it('tells the row, the field, what was found and what is accepted', () => {
    const { gates, problems } = readGates(
      'gate,across,down,turn\n1,x,10,\n2,1.5,,\n3,1,30,up\n4,1,40,left\n',
    );
    expect(gates.map(gate => gate.label)).toEqual(['4']);
    expect(gates[0].turn).toBe(-1);
    expect(problems.map(p => [p.row, p.field, p.found])).toEqual([
      [2, 'across', '"x"'],
      [3, 'down', undefined],
      [4, 'turn', '"up"'],
    ]);
    expect(say(problems[0])).toContain('accepted is a distance in metres');
    expect(problems[0].raw).toBe('1,x,10,');
  });

  it('says per row which column is missing', () => {
    const { gates, problems } = readGates('gate,down\n1,10\n2,20\n');
    expect(gates).toEqual([]);
    expect(problems.map(p => p.raw)).toEqual(['gate,down', '1,10', '2,20']);
    expect(say(problems[0])).toMatch(/^across: is missing; .*headings gate, across, down/);
    expect(readGates('').problems).toHaveLength(1);
  });

  it('reads a thousand gates and writes them back; more are told with what is accepted', () => {
    const gates = rhythmicSet(1000, 10, 3);
    const read = readGates(writeGates(gates, ';'));
    expect(read.problems).toEqual([]);
    expect(read.gates).toEqual(gates);
    const more = readGates(writeGates(rhythmicSet(1001, 10, 3)));
    expect(more.gates).toEqual([]);
    expect(more.problems.map(problem => say(problem))).toEqual([
      'gates: 1001 is not accepted; accepted is at most 1000',
    ]);
  });

  it('loses no row', () => {
    const cell = fc.oneof(fc.string(), fc.double({ noNaN: true }).map(String));
    const row = fc.array(cell, { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 10 }), rows => {
        const quoted = rows.map(r => r.map(c => `"${c.replaceAll('"', '""')}"`).join(',')).join('\n');
        const read = readGates(`gate,across,down\n${quoted}\n`);
        const given = rows.filter(r => r.some(c => c.trim() !== '')).length;
        expect(read.gates.length + new Set(read.problems.map(p => p.row)).size).toBe(given);
      }),
    );
  });

  it('carries what it could not read back into the file as it was written, and never reads it again', () => {
    // Line breaks, quotes and the words of a heading row: none of them may come back as anything else.
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('across', 'down', 'x', 'y', '#', 'a\nb', '"', ' not read ('),
      fc.double({ noNaN: true }).map(String),
    );
    const row = fc.array(cell, { minLength: 3, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 6 }), rows => {
        const quoted = rows.map(r => r.map(c => `"${c.replaceAll('"', '""')}"`).join(',')).join('\n');
        const read = readGates(`# mine\ngate,across,down\n0,0,0\n${quoted}\n`);
        const written = writeGates(read.gates, ',', read.stated);
        for (const { raw } of read.problems) {
          for (const line of raw.split(/\r\n|\n|\r/)) expect(written).toContain(line);
        }
        const again = readGates(written);
        expect(again.problems).toEqual([]);
        expect(again.stated).toEqual(read.stated);
        expect(again.gates).toHaveLength(read.gates.length);
      }),
    );
    expect(readGates('#, across, down\n1,1,10\n').gates).toHaveLength(1);
  });

  it('reads what the file states of the whole set, in any unit people write', () => {
    const { gates, stated, problems } = readGates(
      '# set by the coach, 20 gates\n#on the upper part\ngate;across;down;Slope (%);speed (m/s);gate width;Discipline;category\n' +
        '1;1,4;9;36,4;10;5 m;slalom;U16 girls\n2;-1,4;19;;;;;\n',
    );
    expect(problems).toEqual([]);
    expect(gates).toHaveLength(2);
    expect(stated).toMatchObject({
      discipline: 'SL',
      speedKmh: 36,
      keepSpeed: true,
      gateWidthM: 5,
      category: 'U16 girls',
      comments: [' set by the coach, 20 gates', 'on the upper part'],
    });
    // atan 0.364, plane trigonometry.
    expect(stated.slopeDeg).toBeCloseTo(20.0, 1);
    expect(readGates('gate,x,y,start speed\n1,1,10,40 km/h\n').stated).toEqual({
      speedKmh: 40,
      keepSpeed: false,
    });
    expect(readGates('gate,x,y\n1,1,10\n').stated).toEqual({});
  });

  it('takes a number sign for the gate and for a comment', () => {
    const { gates, stated } = readGates('# mine\n#,across,down\n7,1,10\n');
    expect(gates.map(gate => gate.label)).toEqual(['7']);
    expect(stated.comments).toEqual([' mine']);
    expect(readGates('\n# only words\n').problems).toHaveLength(1);
  });

  it('tells a statement it cannot use, and still reads the gate', () => {
    const { gates, stated, problems } = readGates('gate,x,y,slope,speed\n1,1,10,steep,900\n2,-1,20,,\n');
    expect(gates).toHaveLength(2);
    expect(stated).toEqual({ comments: [' not read (slope, speed): 1,1,10,steep,900'] });
    expect(problems.map(problem => [problem.row, say(problem)])).toEqual([
      [2, 'slope: "steep" is not accepted; accepted is a number from 1 to 40 °'],
      [2, 'speed: "900" is not accepted; accepted is a number from 5 to 120 km/h'],
    ]);
  });

  it('leaves a column that differs from gate to gate with its gates', () => {
    const text = 'gate,x,y,slope,notes\n1,1,10,18,ice\n2,-1,20,21,\n';
    const { gates, stated, problems } = readGates(text);
    expect(problems).toEqual([]);
    expect(stated).toEqual({});
    expect(gates.map(gate => gate.others)).toEqual([
      [
        ['slope', '18'],
        ['notes', 'ice'],
      ],
      [['slope', '21']],
    ]);
    const again = readGates(writeGates(gates, ',', { slopeDeg: 19 }));
    expect(again.gates).toEqual(gates);
    expect(again.stated).toEqual({ slopeDeg: 19 });
    expect(readGates(writeGates(gates)).gates).toEqual(gates);
  });

  it('writes no exponent', () => {
    const gate = { label: '1', colour: null, turn: null };
    const text = writeGates([{ ...gate, x: 2e-7, y: -3e-9 }]);
    expect(text.split('\n')[1]).toBe('1,0,0,');
    expect(readGates(text).problems).toEqual([]);
  });

  it('writes a plain set as plain columns', () => {
    expect(writeGates(rhythmicSet(2, 10, 3).map(gate => ({ ...gate, turn: null })))).toBe(
      'gate,across (m),down (m),colour\n1,1.5,10,red\n2,-1.5,20,blue\n',
    );
  });

  it('keeps a comment that names both columns', () => {
    const gates = rhythmicSet(2, 10, 3).map(gate => ({ ...gate, turn: null }));
    for (const comment of ['x|y', 'across;down', ' x,y']) {
      expect(readGates(writeGates(gates, ';', { comments: [comment] })).stated).toEqual({
        comments: [comment],
      });
    }
  });

  it('loses nothing on the way to a file and back', () => {
    const word = fc.string({ minLength: 1, maxLength: 12 }).map(text => text.trim() || 'x');
    const heading = fc.oneof(word, fc.constantFrom('slope', 'turn', 'speed', 'notes', 'gate', 'colour'));
    const gate = fc.record({
      label: word,
      x: fc.double({ min: -50, max: 50, noNaN: true }).map(x => Number(x.toFixed(6)) + 0),
      colour: fc.option(word),
      turn: fc.constantFrom(1 as const, -1 as const, null),
      others: fc.option(fc.array(fc.tuple(heading, word), { minLength: 1, maxLength: 3 }), {
        nil: undefined,
      }),
    });
    const statement = fc.record(
      {
        discipline: fc.constantFrom('SL' as const, 'GS' as const),
        slopeDeg: fc.double({ min: 1, max: 40, noNaN: true }),
        greatestEdgeDeg: fc.double({ min: 40, max: 80, noNaN: true }),
        gateWidthM: fc.double({ min: 0.5, max: 20, noNaN: true }),
        category: word,
        comments: fc.array(
          fc.string().filter(text => !/[\r\n]/.test(text)),
          { minLength: 1, maxLength: 2 },
        ),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.array(gate, { minLength: 1, maxLength: 5 }), statement, (given, stated) => {
        const gates = given.map(({ others, ...rest }, i) => ({
          ...rest,
          y: 10 * i,
          ...(others && { others: byHeading(others) }),
        }));
        const read = readGates(writeGates(gates, ';', stated));
        expect(read.problems).toEqual([]);
        expect(read.gates.map(each => ({ ...each, others: sorted(each.others) }))).toEqual(
          gates.map(each => ({ ...each, others: sorted(each.others) })),
        );
        expect(read.stated).toEqual(stated);
      }),
    );
  });
});

type Others = NonNullable<ReturnType<typeof readGates>['gates'][number]['others']>;

/** Cells of one gate as a file has them: those of one heading beside each other. */
const byHeading = (others: Others): Others => {
  const headings = [...new Set(others.map(([heading]) => heading))];
  return headings.flatMap(heading => others.filter(([each]) => each === heading));
};
const sorted = (others: Others | undefined) =>
  others && byHeading([...others].sort(([a], [b]) => (a < b ? -1 : 1)));
