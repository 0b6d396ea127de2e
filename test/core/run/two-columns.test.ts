import { describe, expect, it } from 'vitest';
import { readEdges, readProfile, TableTextError } from '../../../core/run/index.ts';

function problems(text: string, read: (text: string) => unknown = readEdges): readonly string[] {
  try {
    read(text);
  } catch (error) {
    expect(error).toBeInstanceOf(TableTextError);
    return (error as TableTextError).problems;
  }
  throw new Error(`${JSON.stringify(text)} was accepted`);
}

describe('files of two columns that cannot be read', () => {
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
    expect(readEdges('0,0;0,0\n0,5;30,5\n').edge(0.5)).toBeCloseTo((30.5 * Math.PI) / 180, 12);
  });

  it('have what is no number named with its column', () => {
    for (const cell of ['zero', 'NaN', 'Infinity', '0x10', '', '1.000,5']) {
      const found = problems(`0;0\n1;${cell}\n`, readProfile);
      expect(found).toEqual([`line 2: height (m) ${JSON.stringify(cell)} found; a number is accepted`]);
    }
  });

  it('name the line where the ground is too steep', () => {
    expect(problems('distance,height\n0,0\n10,-2\n11,-40\n', readProfile)).toEqual([
      'line 4: height -40 m found 1 m after -2 m; ground up to 80° is accepted',
    ]);
  });
});
