import { describe, expect, it } from 'vitest';
import { shownAs } from '../../../core/units/index.ts';
import { axisTitle, tickRoom, ticksAcross } from '../../../renderer/kit/chart-axes.tsx';
import { smallText, textWidth } from '../../../renderer/kit/text-width.ts';

describe('axisTitle', () => {
  it('gives up its remark and then its end, never its unit', () => {
    const label = 'Radius (dotted: cosine rule)';
    expect(axisTitle(label, 'm', 400)).toBe('Radius (dotted: cosine rule), m');
    expect(axisTitle(label, 'm', 100)).toBe('Radius, m');
    expect(axisTitle('From rear contact', 'mm', 90)).toMatch(/^From.*…, mm$/);
    for (const room of [400, 200, 100, 60]) {
      expect(axisTitle(label, 'm', room)).toMatch(/, m$/);
      expect(textWidth(axisTitle(label, 'm', room), smallText())).toBeLessThanOrEqual(room);
    }
  });
  it('adds nothing to a bare number', () => {
    expect(axisTitle('Swing, greatest 1', '', 300)).toBe('Swing, greatest 1');
  });
});

describe('ticks', () => {
  it('stand apart however narrow the chart', () => {
    const shown = shownAs('station', 'metric');
    for (let width = 60; width <= 900; width += 20) {
      const ticks = ticksAcross([0, 1.36], shown, width);
      expect(ticks.length).toBeGreaterThan(0);
      for (let at = 1; at < ticks.length; at++) {
        const apart = ((ticks[at]!.held - ticks[at - 1]!.held) / 1.36) * width;
        const half = (text: string) => textWidth(text, smallText()) / 2;
        expect(apart).toBeGreaterThan(half(ticks[at]!.text) + half(ticks[at - 1]!.text));
      }
    }
  });
  it('widen the room at the left when their texts are long', () => {
    expect(tickRoom([{ text: '5' }])).toBe(44);
    expect(tickRoom([{ text: '1000000000' }])).toBeGreaterThan(44);
  });
});
