import { expect, test } from 'vitest';
import { knownUnit, splitUnit } from '../../../core/table/index.ts';

test.each([
  ['Tip width (mm)', 'tipwidth', 'mm'],
  ['tip_width_mm', 'tipwidth', 'mm'],
  ['tipWidthMm', 'tipwidth', 'mm'],
  ['Tip width, mm', 'tipwidth', 'mm'],
  ['Side edge [°]', 'sideedge', 'deg'],
  ['Weight (lbs.)', 'weight', 'lb'],
  // A bracket that holds no unit is part of the name.
  ['Length (running)', 'lengthrunning', null],
  // A unit alone names nothing; it is the word.
  ['mm', 'mm', null],
  ['Ref. 12', 'ref', null],
])('%s', (heading, word, unit) => {
  expect(splitUnit(heading)).toEqual({ word, unit });
});

test('only the units a table may use are known', () => {
  expect(['millimetres', 'cm', 'meters', 'inches', '″', 'kilograms', 'g', 'degrees'].map(knownUnit)).toEqual([
    'mm',
    'cm',
    'm',
    'in',
    'in',
    'kg',
    'g',
    'deg',
  ]);
  expect(['', 'km', 'ft', 'widths'].map(knownUnit)).toEqual([null, null, null, null]);
});
