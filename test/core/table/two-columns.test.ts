import { describe, expect, it } from 'vitest';
import { fromTwoColumns, RowError, TableTextError } from '../../../core/table/index.ts';

const read = (text: string) =>
  fromTwoColumns(text, 'time (s)', 'edge angle (deg)', (first, second) => ({ first, second }));

function problems(text: string): readonly string[] {
  try {
    read(text);
  } catch (error) {
    expect(error).toBeInstanceOf(TableTextError);
    return (error as TableTextError).problems;
  }
  throw new Error(`${JSON.stringify(text)} was accepted`);
}

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
        '0 rows found; two or more rows of time (s) and edge angle (deg) are accepted',
      ]);
    }
  });

  it('have every row with too few or too many columns named', () => {
    expect(problems('t\n1\n2,3,4\n')).toEqual([
      'line 2: 1 value found (1); two are accepted, time (s) and edge angle (deg)',
      'line 3: 3 values found (2,3,4); two are accepted, time (s) and edge angle (deg)',
    ]);
  });

  it('with decimal commas between commas are told what separates then', () => {
    expect(problems('0,0,0,0\n0,5,30,5\n')[1]).toBe(
      'line 2: 4 values found (0,5,30,5); two are accepted, time (s) and edge angle (deg) (with decimal commas, separated by semicolons or tabs)',
    );
  });

  it('have what is no number named with its column', () => {
    for (const cell of ['zero', 'NaN', 'Infinity', '0x10', '', '1.000,5']) {
      expect(problems(`0;0\n1;${cell}\n`)).toEqual([
        `line 2: edge angle (deg) ${JSON.stringify(cell)} found; a number is accepted`,
      ]);
    }
  });

  it('have every value that does not ascend named', () => {
    expect(problems('0,0\n2,1\n1,3\n')).toEqual([
      'line 3: time (s) 1 found after 2; ascending values are accepted',
    ]);
  });

  it('name the line of a point that nothing can be made of', () => {
    const refuse = () => {
      throw new RowError(1, 'a wall', 'ground is accepted');
    };
    expect(() => fromTwoColumns('t,v\n\n0,0\n1,1\n', 'time', 'height', refuse)).toThrow(
      new TableTextError(['line 4: a wall found; ground is accepted']),
    );
    // Whose message only looks like one is no fault of a row.
    const other = new RangeError('point 2: not of this file');
    const fail = () => {
      throw other;
    };
    expect(() => fromTwoColumns('0,0\n1,1\n', 'time', 'height', fail)).toThrow(other);
  });
});
