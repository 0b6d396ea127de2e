import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGates, rhythmicSet, writeGates } from '../../../core/course/index.ts';

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
      [3, 'down', 'nothing'],
      [4, 'turn', '"up"'],
    ]);
    expect(problems[0].message).toContain('accepted is a distance in metres');
    expect(problems[0].raw).toBe('1,x,10,');
  });

  it('says per row which column is missing', () => {
    const { gates, problems } = readGates('gate,down\n1,10\n2,20\n');
    expect(gates).toEqual([]);
    expect(problems.map(p => p.raw)).toEqual(['gate,down', '1,10', '2,20']);
    expect(problems[0].message).toContain('no column for across');
    expect(readGates('').problems).toHaveLength(1);
  });

  it('reads ten thousand rows and writes them back', () => {
    const gates = rhythmicSet(10_000, 10, 3);
    const read = readGates(writeGates(gates, ';'));
    expect(read.problems).toEqual([]);
    expect(read.gates).toEqual(gates);
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
});
