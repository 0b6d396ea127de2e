import { IntlMessageFormat } from 'intl-messageformat';
import { expect, test } from 'vitest';
import {
  acceptedSentence,
  faultsSentence,
  type Key,
  type Language,
  languages,
  type Sentence,
  say,
} from '../../../core/language/index.ts';

const { texts } = languages.en;

test('a quantity is said in the reader’s units, with the digits of its measure', () => {
  const sentence: Sentence = {
    key: 'accepted.from',
    values: { from: { quantity: 'speed', value: 10 } },
  };
  expect(say(sentence)).toBe('36.0\u00a0km/h or more');
  expect(say(sentence, { units: 'imperial' })).toBe('22.4\u00a0mph or more');
});

test('a sentence holds sentences, fields and lists', () => {
  const fault = {
    field: 'edges.baseBevelDeg',
    found: 7,
    accepted: { from: 0, to: 5, unit: 'degrees' },
    where: { line: 3 },
  };
  expect(say(fault)).toBe(
    'line 3, edges.baseBevelDeg: 7 is not accepted; accepted is a number from 0 to 5 degrees',
  );
  expect(say(fault, { fields: 'by label' })).toBe(
    'line 3, Base bevel: 7 is not accepted; accepted is a number from 0 to 5 degrees',
  );
  expect(say(acceptedSentence({ oneOf: ['SL', 'GS'] }))).toBe('SL or GS');
  expect(
    say(
      faultsSentence([
        { field: 'x', found: undefined, accepted: {} },
        { field: 'y', found: 1, accepted: {} },
      ]),
    ),
  ).toBe('x: is missing; accepted is a number (and 1 more)');
});

test('a range is said by its own ends, in the reader’s units where it has a measure', () => {
  const said = (range: object) => say(acceptedSentence(range), { units: 'imperial' });
  expect(said({ from: 1, to: 2, quantity: 'mass' })).toBe('a number from 2.20 to 4.41\u00a0lb');
  expect(said({ from: 1, to: 9, whole: true })).toBe('a whole number from 1 to 9');
  expect(said({ from: 1 })).toBe('1 or more');
  expect(said({ from: 1, whole: true })).toBe('a whole number from 1');
  expect(said({ to: 2, unit: 'mm' })).toBe('at most 2 mm');
  expect(said({ above: 0 })).toBe('a number above 0');
  expect(said({ above: 0, to: 3 })).toBe('a number above 0 and up to 3');
  expect(said({ from: 0, below: 90, unit: '°' })).toBe('a number from 0 to below 90 °');
  expect(said({ above: -90, below: 90 })).toBe('a number above -90 and below 90');
  expect(said({ below: 4 })).toBe('a number below 4');
  expect(said({ whole: true })).toBe('a whole number');
});

test('another language is its texts and nothing else', () => {
  const german: Language = { locale: 'de', texts: { ...texts, 'accepted.from': 'ab {from}' } };
  expect(say({ key: 'accepted.from', values: { from: 3 } }, { language: german })).toBe('ab 3');
});

test('a sentence without one of its values does not compile', () => {
  // @ts-expect-error `to` is missing
  const short: Sentence = { key: 'accepted.range', values: { from: 1 } };
  // @ts-expect-error there is no such sentence
  const none: Sentence = { key: 'accepted.never' };
  // @ts-expect-error a text without placeholders takes no values
  const full: Sentence = { key: 'accepted.number', values: { from: 1 } };
  expect([short, none, full]).toHaveLength(3);
});

/** The names by which the library itself finds values in a message. */
function namesIn(message: string): string[] {
  const names = new Set<string>();
  type Parts = ReturnType<IntlMessageFormat['getAst']>;
  const visit = (parts: Parts): void => {
    for (const part of parts) {
      if (part.type === LITERAL || part.type === POUND) continue;
      names.add(part.value);
      if ('options' in part) for (const { value } of Object.values(part.options)) visit(value);
    }
  };
  visit(new IntlMessageFormat(message, 'en', undefined, { ignoreTag: true }).getAst());
  return [...names].toSorted();
}

/** Parts of a parsed message that hold no value: plain text, and the number sign of a plural. */
const LITERAL = 0;
const POUND = 7;

/** The same by the rule the types follow: a brace that no selector opens. */
const namesByRule = (message: string): string[] =>
  [...new Set([...message.matchAll(/(?<![a-z0-9])\{([^,}]*)/g)].map(([, name]) => name!))].toSorted();

test.each(Object.entries(languages))(
  'every message of %s is whole and asks for the values of English',
  (_, language) => {
    for (const key of Object.keys(texts) as Key[]) {
      expect(namesIn(language.texts[key]), key).toEqual(namesIn(texts[key]));
      expect(namesByRule(texts[key]), key).toEqual(namesIn(texts[key]));
    }
  },
);
