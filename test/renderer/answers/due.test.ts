import { describe, expect, it } from 'vitest';
import { agoText, daysBetween, dueState, dueText, urgency } from '../../../renderer/answers/due.ts';
import { today } from '../../../renderer/answers/today.ts';

const after = { edgeDays: 7, waxDays: 3 };
const edged = (date: string) => ({ pairName: 'Larch', date, sideAngleDeg: 87 });
const waxed = (date: string) => ({ pairName: 'Larch', date, wax: 'cold' });

describe('what is due', () => {
  it('counts whole days over the ends of months, leap days and clock changes', () => {
    expect(daysBetween('2024-02-27', '2024-03-01')).toBe(3);
    expect(daysBetween('2025-03-29', '2025-03-31')).toBe(2);
    expect(daysBetween('2025-01-02', '2025-01-01')).toBe(-1);
  });

  it('is due on the day the threshold is reached, not before', () => {
    const log = [edged('2025-01-01'), waxed('2025-01-06')];
    expect(dueText(dueState(log, after, '2025-01-07'))).toBe('');
    expect(dueText(dueState(log, after, '2025-01-08'))).toBe('edges');
    expect(dueText(dueState(log, after, '2025-01-09'))).toBe('edges and wax');
  });

  it('takes the latest entry of each kind, whatever the order', () => {
    const state = dueState(
      [edged('2025-01-07'), edged('2025-01-02'), waxed('2025-01-08')],
      after,
      '2025-01-08',
    );
    expect([state.edge.days, state.wax.days, state.due]).toEqual([1, 0, false]);
    expect([agoText(state.edge), agoText(state.wax)]).toEqual(['1 day ago', 'today']);
  });

  it('is due when it was never logged, and comes first', () => {
    const never = dueState([waxed('2025-01-08')], after, '2025-01-08');
    expect([never.edge.due, never.wax.due, agoText(never.edge)]).toEqual([true, false, 'never']);
    expect(urgency(never, after)).toBe(Number.POSITIVE_INFINITY);
  });

  it('does not count a wax that names nothing', () => {
    expect(dueState([{ pairName: 'Larch', date: '2025-01-08', wax: ' ' }], after, '2025-01-08').wax.due).toBe(
      true,
    );
  });

  it('names the day where the person is', () => {
    expect(today(new Date(2025, 0, 5, 23, 59))).toBe('2025-01-05');
  });
});
