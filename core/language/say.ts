import { IntlMessageFormat } from 'intl-messageformat';
import type { FieldFault } from '../fault/index.ts';
import { formatQuantity, type System } from '../units/index.ts';
import { acceptedSentence, faultSentence } from './fault-words.ts';
import type { Language } from './language.ts';
import { languages } from './languages.ts';
import type { FieldName, Key, Quantity, Sentence, Value } from './sentence.ts';

/** How a reader wants to be told. */
export interface Reader {
  readonly units?: System;
  readonly language?: Language;
  /** Fields as a file writes them, or called by their label; as written unless given. */
  readonly fields?: 'as written' | 'by label';
}

type Formats = Map<string, IntlMessageFormat>;

/** Messages parsed so far, by language; there are no more of them than texts. */
const parsed = new WeakMap<Language, Formats>();

function formatOf(language: Language, key: Key): IntlMessageFormat {
  const formats: Formats = parsed.get(language) ?? new Map();
  parsed.set(language, formats);
  let format = formats.get(key);
  if (!format) {
    format = new IntlMessageFormat(language.texts[key], language.locale, undefined, { ignoreTag: true });
    formats.set(key, format);
  }
  return format;
}

/** A sentence, a label or a field at fault in the reader's language and units. */
export function say(said: Sentence | FieldFault, reader: Reader = {}): string {
  const { language = languages.en } = reader;
  const sentence = 'accepted' in said ? faultSentence(said) : said;
  if (sentence.values === undefined) return String(formatOf(language, sentence.key).format());
  const values = Object.entries<Value>(sentence.values).map(
    ([name, value]) => [name, sayValue(value, reader)] as const,
  );
  return String(formatOf(language, sentence.key).format(Object.fromEntries(values)));
}

/** Several sentences one after the other. */
export const sayAll = (sentences: readonly Sentence[], reader: Reader = {}): string =>
  sentences.map(sentence => say(sentence, reader)).join(' ');

/** A value as `say` puts it into a sentence; a bare number stays one, so that plurals can count it. */
function sayValue(value: Value, reader: Reader): string | number {
  if (typeof value === 'number' || typeof value === 'string') return value;
  if (isList(value)) return sayList(value, 'unit', reader);
  if ('anyOf' in value) return sayList(value.anyOf, 'disjunction', reader);
  if ('key' in value) return say(value, reader);
  if ('accepted' in value) return say('field' in value ? value : acceptedSentence(value.accepted), reader);
  return 'field' in value ? sayField(value, reader) : sayQuantity(value, reader);
}

/** Made once: making one takes longer than a hundred sentences. */
const lists = new Map<string, Intl.ListFormat>();

function listOf(locale: string, type: 'unit' | 'disjunction'): Intl.ListFormat {
  const key = `${locale} ${type}`;
  const list = lists.get(key) ?? new Intl.ListFormat(locale, { type, style: 'short' });
  lists.set(key, list);
  return list;
}

function sayList(values: readonly Value[], type: 'unit' | 'disjunction', reader: Reader): string {
  const { language = languages.en } = reader;
  return listOf(language.locale, type).format(values.map(each => String(sayValue(each, reader))));
}

const isList = (value: Value): value is readonly Value[] => Array.isArray(value);

function sayQuantity({ quantity, value, plusMinus, decimals, bare }: Quantity, { units }: Reader): string {
  const shown = formatQuantity(value, quantity, { system: units, uncertainty: plusMinus, decimals });
  return bare ? shown.value : shown.text;
}

/** The label of a field; one without a label is told as it is written. */
function sayField({ field }: FieldName, reader: Reader): string {
  if (reader.fields !== 'by label') return field;
  const { texts } = reader.language ?? languages.en;
  const path = field.split('.');
  // The longest end that has one: "plate.lengthMm" is not the length of the ski, "edges.baseBevelDeg" the base bevel.
  for (let from = 0; from < path.length; from++) {
    const key = `field.${path.slice(from).join('.')}`;
    if (Object.hasOwn(texts, key)) return say({ key } as Sentence, reader);
  }
  return field;
}
