import { describe, expect, it } from 'vitest';
import { checkSetting, rhythmicSet } from '../../../core/course/index.ts';
import { say, sayAll } from '../../../core/language/index.ts';

const slope = Math.atan(0.4);

describe('checkSetting', () => {
  it('passes a slalom with 33 % of its drop in turns and 10 m gates', () => {
    const gates = rhythmicSet(60, 8.2, 3);
    const check = checkSetting(gates, { discipline: 'SL', category: 'men', slope, drop: 182, gateWidth: 5 });
    expect(check.items.map(item => [say(item.rule), item.verdict])).toEqual([
      ['direction changes', 'passes'],
      ['turning pole to turning pole', 'passes'],
      ['slope', 'passes'],
      ['gate width', 'passes'],
      ['drop, top level', 'passes'],
    ]);
    expect(check.verdict).toBe('passes');
    // 30 % of 182 is 54.6, less three: 52; 35 % is 63.7, and three: 66.
    expect(sayAll(check.items[0].limit)).toContain('52 to 66');
  });

  it('names the gates that stand too close and keeps the status of each limit', () => {
    const gates = rhythmicSet(60, 10, 3).map((gate, i) => (i === 5 ? { ...gate, y: gate.y - 5 } : gate));
    const check = checkSetting(gates, { discipline: 'SL', category: 'women', slope });
    const distance = check.items.find(item => say(item.rule).startsWith('turning pole'));
    expect(distance).toMatchObject({ verdict: 'fails', gates: ['5–6', '6–7'], status: 'from memory' });
    expect(check.items[0].status).toBe('seen');
    expect(check.items.find(item => item.rule.key === 'course.gateWidth')?.verdict).toBe('not given');
    expect(check.verdict).toBe('fails');
  });

  it('keeps giant slalom gates 10 m apart and children within 27 m', () => {
    const gates = rhythmicSet(30, 28, 7);
    const options = { discipline: 'GS' as const, slope: Math.atan(0.27) };
    const adults = checkSetting(gates, { ...options, category: 'men' });
    const children = checkSetting(gates, { ...options, category: 'children' });
    expect(adults.items.find(item => say(item.rule).startsWith('nearest'))?.verdict).toBe('passes');
    expect(children.items.find(item => say(item.rule).startsWith('turning'))?.verdict).toBe('fails');
    expect(sayAll(adults.items[0].limit)).toMatch(/11 to 15\s%/);
  });
});
