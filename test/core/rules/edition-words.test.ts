import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { editions, editionText, limitedQuantity } from '../../../core/rules/index.ts';

describe('the words of an edition', () => {
  it('are by key, all of them, where the edition is the program’s own', () => {
    for (const { edition, notes, limits } of editions) {
      const texts = [edition, notes!, ...limits.flatMap(({ rule, source }) => [rule, source])];
      for (const text of texts) {
        expect(editionText(text).key).toMatch(/^edition\./);
        expect(say(editionText(text))).toBe(text);
      }
    }
  });

  it('are as they are written where a file has its own', () => {
    expect(editionText('Ostrelle club rules (demo)')).toEqual({
      key: 'rules.asWritten',
      values: { text: 'Ostrelle club rules (demo)' },
    });
  });

  it('call what is limited without its least or most, which the limit says', () => {
    for (const limit of editions.flatMap(({ limits }) => limits)) {
      expect(say(limitedQuantity(limit))).toBe(limit.rule.replace(/ at (least|most)$/, ''));
      expect(limitedQuantity(limit).key).toBe(`rules.limited.${limit.quantity}`);
    }
    const own = { rule: 'club radius at least', quantity: 'radiusM' } as const;
    expect(say(limitedQuantity(own))).toBe('club radius');
  });
});
