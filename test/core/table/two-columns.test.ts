import { describe, expect, it } from 'vitest';
import { FieldError } from '../../../core/fault/index.ts';
import { fromTwoColumns } from '../../../core/table/index.ts';
import { told } from '../fault/told.ts';

const read = (text: string) =>
  fromTwoColumns(text, 'time (s)', 'edge angle (deg)', (first, second) => ({ first, second }));

const problems = (text: string): readonly string[] => told(() => read(text));

describe('files of two columns', () => {
  it('are read with commas, semicolons or tabs, with a heading and remarks', () => {
    const expected = { first: [0, 0.5], second: [0, 30.5] };
    expect(read('0,0\n0.5,30.5\n')).toEqual(expected);
    expect(read('\uFEFFt;edge # said\r\n0,0;0\r\n\r\n"0,5";"30,5"\r\n')).toEqual(expected);
    expect(read('# drawn by hand\n0\t0\n0,5\t30,5')).toEqual(expected);
  });

  it('are told to be empty', () => {
    for (const text of ['', '\n \n', '\uFEFF', 'time,edge\n', '# nothing\n']) {
      expect(problems(text)).toEqual([
        'rows: 0 is not accepted; accepted is two or more rows of time (s) and edge angle (deg)',
      ]);
    }
  });

  it('have every row with too few or too many columns named', () => {
    expect(problems('t\n1\n2,3,4\n')).toEqual([
      'line 2, row: 1 is not accepted; accepted is two values, time (s) and edge angle (deg)',
      'line 3, row: 2,3,4 is not accepted; accepted is two values, time (s) and edge angle (deg)',
    ]);
  });

  it('with decimal commas between commas are told what separates then', () => {
    expect(problems('0,0,0,0\n0,5,30,5\n')[1]).toBe(
      'line 2, row: 0,5,30,5 is not accepted; accepted is two values, time (s) and edge angle (deg) (with decimal commas, separated by semicolons or tabs)',
    );
  });

  it('have what is no number named with its column', () => {
    for (const cell of ['zero', 'NaN', 'Infinity', '0x10', '', '1.000,5']) {
      expect(problems(`0;0\n1;${cell}\n`)).toEqual([
        `line 2, edge angle (deg): ${JSON.stringify(cell)} is not accepted; accepted is a number`,
      ]);
    }
  });

  it('have every value that does not ascend named', () => {
    expect(problems('0,0\n2,1\n1,3\n')).toEqual([
      'line 3, time (s): 1 is not accepted; accepted is a number above 2',
    ]);
  });

  it('name the line of a point that nothing can be made of', () => {
    const refuse = () => {
      throw new FieldError({ field: 'height', found: 90, accepted: { to: 80 }, where: { row: 2 } });
    };
    expect(told(() => fromTwoColumns('t,v\n\n0,0\n1,1\n', 'time', 'height', refuse))).toEqual([
      'line 4, height: 90 is not accepted; accepted is at most 80',
    ]);
    // Whose message only looks like one is no fault of a row.
    const other = new RangeError('point 2: not of this file');
    const fail = () => {
      throw other;
    };
    expect(() => fromTwoColumns('0,0\n1,1\n', 'time', 'height', fail)).toThrow(other);
  });
});
