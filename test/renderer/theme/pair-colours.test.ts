import { readFileSync } from 'node:fs';
import { lab, rgb } from 'd3';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../renderer/theme/tokens.css', import.meta.url), 'utf8');

/** Custom properties of one look. */
function tokens(theme: string): Record<string, string> {
  const block = new RegExp(`data-theme='${theme}'\\]\\s*\\{([^}]*)\\}`).exec(css)![1]!;
  return Object.fromEntries(
    [...block.matchAll(/--([a-z-]+):\s*([^;]+);/g)].map(found => [found[1]!, found[2]!]),
  );
}

/** Relative luminance and contrast ratio of WCAG 2.x [from memory]. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string) => {
    const { r, g, b: blue } = rgb(colour);
    const linear = [r, g, blue].map(each => {
      const share = each / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * linear[0]! + 0.7152 * linear[1]! + 0.0722 * linear[2]!;
  };
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** Full-strength colour blindness as matrices on linear RGB: Machado, Oliveira, Fernandes (2009) [from memory]. */
const SIGHT: Record<string, readonly number[]> = {
  usual: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

function seen(colour: string, matrix: readonly number[]): string {
  const { r, g, b } = rgb(colour);
  const linear = [r, g, b].map(each => {
    const share = each / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const out = [0, 1, 2].map(row => {
    const value = [0, 1, 2].reduce((sum, at) => sum + matrix[row * 3 + at]! * linear[at]!, 0);
    const clipped = Math.min(1, Math.max(0, value));
    return Math.round(255 * (clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * clipped ** (1 / 2.4) - 0.055));
  });
  return `rgb(${out.join(',')})`;
}

function apart(a: string, b: string): number {
  const first = lab(a);
  const second = lab(b);
  return Math.hypot(first.l - second.l, first.a - second.a, first.b - second.b);
}

describe.each(['snow', 'night', 'projector'])('the look "%s"', theme => {
  const t = tokens(theme);
  const pairs = ['pair-a', 'pair-b', 'pair-c', 'pair-d'].map(name => t[name]!);

  it('keeps the pair colours apart for every kind of sight', () => {
    for (const [sight, matrix] of Object.entries(SIGHT)) {
      for (let i = 0; i < 4; i++) {
        for (let j = i + 1; j < 4; j++) {
          const distance = apart(seen(pairs[i]!, matrix), seen(pairs[j]!, matrix));
          expect(distance, `${sight}: ${pairs[i]} and ${pairs[j]}`).toBeGreaterThan(15);
        }
      }
    }
  });

  it('gives text and lines the contrast they need', () => {
    for (const ground of [t.ground!, t.surface!]) {
      for (const ink of [t.ink!, t['ink-soft']!, t.accent!, ...pairs]) {
        expect(contrast(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(t.control!, ground)).toBeGreaterThanOrEqual(3);
    }
    for (const colour of pairs) expect(contrast(t['on-pair']!, colour)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(t.danger!, t['danger-wash']!)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(t['accent-ink']!, t.accent!)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(t.accent!, t['accent-wash']!)).toBeGreaterThanOrEqual(4.5);
  });
});
