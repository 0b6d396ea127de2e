import { expect, test } from 'vitest';
import { type Sentence, say } from '../../../core/language/index.ts';
import { input, type Working, workingInWords } from '../../../core/working/index.ts';

const working: Working = {
  key: 'carve.penetration',
  title: { key: 'carve.title.penetration' },
  symbol: 'e',
  formula: '',
  solved: {
    of: { key: 'carve.of.load' },
    by: { key: 'carve.by.newton', values: { steps: 1 } },
    left: 'e',
    right: 'w',
    name: 'e',
    unit: 'm',
    within: 1e-9,
  },
  inputs: [
    input('w', 'w', 'carve.baseHeightThere', 0.004, 'm', 'carve.turnRadius'),
    input('y', 'y', 'carve.halfWidthThere', 0.033, 'm', { key: 'shape.from.smoothed' }),
  ],
  result: { value: 0.004, unit: 'm' },
  note: [
    { key: 'carve.note.deepest', values: { at: { quantity: 'station', value: 0.762 } } },
    { key: 'carve.note.bites' },
  ],
  source: { key: 'source.planeGeometry' },
  status: 'derived',
};

test('a working is put into words whole, in the reader’s units, and its numbers stay', () => {
  const imperial = (sentence: Sentence) => say(sentence, { units: 'imperial' });
  const { title, solved, inputs, note, source, ...rest } = workingInWords(working, imperial);
  expect({ title, source, note }).toEqual({
    title: 'Greatest depth of the edge',
    source: 'Plane geometry',
    note: 'Deepest 30.0\u00a0in from the rear contact point. The edge bites.',
  });
  expect(solved).toEqual({
    ...working.solved,
    of: 'what the snow carries along the edge and the load on the ski',
    by: 'by 1 Newton step for the bent and twisted ski in its own groove',
  });
  expect(inputs).toEqual([
    { ...working.inputs[0], meaning: 'height of the base there, solved' },
    { ...working.inputs[1], meaning: 'half-width there', from: 'the edge smoothed through widthStations' },
  ]);
  expect(rest).toEqual({
    key: working.key,
    symbol: 'e',
    formula: '',
    result: working.result,
    status: 'derived',
  });
});

test('what a working does not have is not there in words either', () => {
  const { note: _, solved: __, ...plain } = working;
  const said = workingInWords(plain, say);
  expect('note' in said || 'solved' in said).toBe(false);
  expect(workingInWords({ ...working, note: { key: 'carve.note.bites' } }, say).note).toBe('The edge bites.');
});
