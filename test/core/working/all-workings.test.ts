import { describe, expect, it } from 'vitest';
import { checkWorking, input, ownResult, type Working } from '../../../core/working/index.ts';
import { explained } from './examples/index.ts';

/**
 * Formulas of one input that is known by itself, and not from the result.
 */
const KNOWN_BY_ITSELF = ['line.radius'];

describe('every working', () => {
  it('was found', () => {
    expect(explained.map(each => each.name)).toContain('shapeWorkings');
  });

  it.each(explained)('$room: $name gives its result by its formula', ({ workings }) => {
    expect(workings().length).toBeGreaterThan(0);
    expect(workings().flatMap(checkWorking)).toEqual([]);
  });

  it.each(explained)('$room: $name is not fed its own result', ({ workings }) => {
    const fed = workings()
      .filter(({ key }) => !KNOWN_BY_ITSELF.includes(key))
      .flatMap(working => (ownResult(working) === null ? [] : `${working.key}: ${ownResult(working)}`));
    expect(fed).toEqual([]);
  });

  it.each(explained)(
    '$room: $name has no equation set by hand beside its formula without a reason',
    ({ workings }) => {
      const typed = workings().filter(({ tex, texReason }) => tex !== undefined && !texReason);
      expect(typed.map(({ key }) => key)).toEqual([]);
    },
  );
});

describe('a working that is fed its own result', () => {
  const depth: Working = {
    key: 'test.depth',
    title: { key: 'shape.title.depth' },
    symbol: 'd',
    formula: 'a - b',
    inputs: [
      input('a', 'a', 'working.contactLength', 3, 'm'),
      input('b', 'b', 'working.contactLength', 1, 'm'),
    ],
    result: { value: 2, unit: 'm' },
    source: { key: 'source.planeGeometry' },
    status: 'definition',
  };
  it('is told from one that is not', () => {
    expect(ownResult(depth)).toBeNull();
    expect(ownResult({ ...depth, formula: '(a)' })).toBe('the formula is the input a itself');
    expect(ownResult({ ...depth, formula: '6 / a' })).toBe('a alone gives the result');
    expect(ownResult({ ...depth, formula: '2 * b / b + 0 * b' })).toBe('b alone gives the result');
    expect(ownResult({ ...depth, formula: '', inputs: [] })).toBeNull();
  });
});
