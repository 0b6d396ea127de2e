import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { begin, MAX_STEPS, push, redo, settle, undo } from '../../../renderer/state/history.ts';

describe('history', () => {
  it('gives back what was there before an edit, and brings the edit back', () => {
    const edited = push(push(begin(1), 2, 'two'), 3, 'three');
    const back = undo(edited);
    expect(back.present).toBe(2);
    expect(back.future[0]?.label).toBe('three');
    expect(redo(back).present).toBe(3);
  });

  it('makes one step of edits that share a key, until settled', () => {
    const dragged = push(push(push(begin(0), 1, 'drag', 'k'), 2, 'drag', 'k'), 3, 'drag', 'k');
    expect(undo(dragged).present).toBe(0);
    const again = push(settle(dragged), 4, 'drag', 'k');
    expect(undo(again).present).toBe(3);
  });

  it('does not merge into a step of another key', () => {
    const mixed = push(push(begin(0), 1, 'a', 'a'), 2, 'b', 'b');
    expect(undo(mixed).present).toBe(1);
  });

  it('forgets the future on a new edit', () => {
    const branched = push(undo(push(begin(0), 1, 'one')), 9, 'nine');
    expect(redo(branched)).toBe(branched);
  });

  it('keeps no more than its limit', () => {
    let history = begin(0);
    for (let value = 1; value <= MAX_STEPS + 50; value++) history = push(history, value, 'step');
    expect(history.past.length).toBe(MAX_STEPS);
  });

  it('undoes and redoes any run of edits without loss', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 40 }), values => {
        const start = begin(-1e9);
        const all = values.reduce((history, value) => push(history, value, 'edit'), start);
        let back = all;
        while (back.past.length > 0) back = undo(back);
        expect(back.present).toBe(-1e9);
        while (back.future.length > 0) back = redo(back);
        expect(back.present).toBe(all.present);
      }),
    );
  });
});
