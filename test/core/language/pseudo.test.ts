import { expect, test } from 'vitest';
import { languages, say } from '../../../core/language/index.ts';
import { pseudo, pseudoOf } from './pseudo.ts';

test('a text is marked, longer and in brackets; what is put into it stays', () => {
  expect(pseudo('Save {name}')).toBe('⟦Śáṽé {name}··⟧');
  expect(pseudo('{n, plural, one{# pair} other{# pairs}}')).toBe(
    '⟦{n, plural, one{# ƥáíŕ} other{# ƥáíŕś}}··⟧',
  );
});

test('every text of English is said in it', () => {
  const language = pseudoOf(languages.en);
  expect(say({ key: 'common.pairs', values: { count: 2 } }, { language })).toMatch(/^⟦2 ƥáíŕś·+⟧$/);
  const sentence = {
    key: 'run.tiltTheSkis',
    values: { angulation: { quantity: 'angleDeg', value: 12 } },
  } as const;
  expect(say(sentence, { language })).toMatch(/^⟦Ťíĺť ťĥé śķíś 12\.0° ƀéýóńď/);
});
