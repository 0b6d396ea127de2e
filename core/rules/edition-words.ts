import type { PlainKey, Sentence } from '../language/index.ts';
import type { Limit } from './edition.ts';

type EditionKey = Extract<PlainKey, `edition.${string}`>;
type EditionName = EditionKey extends `edition.${infer Name}` ? Name : never;

/** Texts of the program's own editions, in English as the files of editions are. */
export const EDITION_TEXTS = {
  season2024: 'International federation 2024/25, as known to this program',
  season2024Notes:
    'The width limits for giant slalom are as in a federation notice for 2016/17; the children’s limits and the widths for the other disciplines are from memory.',
  lengthAtLeast: 'length at least',
  lengthAtMost: 'length at most',
  radiusAtLeast: 'radius at least',
  waistAtLeast: 'width under the binding at least',
  waistAtMost: 'width under the binding at most',
  frontAtMost: 'width at the front at most',
  standingHeightAtMost: 'standing height at most',
  soleHeightAtMost: 'boot sole height at most',
  guide: 'minimum lengths and radii as listed by an Olympic broadcaster’s guide',
  guideEased:
    'minimum lengths and radii as listed by an Olympic broadcaster’s guide; −5 cm in lower-level races as in an older edition',
  copy: 'encyclopaedia copy of the international federation’s equipment specification, 2024/25',
  copyEased:
    'encyclopaedia copy of the international federation’s equipment specification, 2024/25; −5 cm in lower-level races as in an older edition',
  memory: 'recalled, not looked up: confirm in the rulebook in force',
  notice: 'federation notice for 2016/17, in force since 2017/18',
  specification: 'international federation equipment specification',
} as const satisfies Readonly<Record<EditionName, string>>;

const known: ReadonlyMap<string, EditionKey> = new Map(
  Object.entries(EDITION_TEXTS).map(([name, text]) => [text, `edition.${name as EditionName}`]),
);

/** A text of an edition for a reader: by key where it is one of the program's own, as written where a file has others. */
export function editionText(text: string): Sentence {
  const key = known.get(text);
  return key ? { key } : { key: 'rules.asWritten', values: { text } };
}

/** What a rule limits; whether at least or at most stands in the limit. */
export const limitedQuantity = ({ rule, quantity }: Pick<Limit, 'rule' | 'quantity'>): Sentence =>
  known.has(rule)
    ? { key: `rules.limited.${quantity}` }
    : { key: 'rules.asWritten', values: { text: rule.replace(/ at (least|most)$/, '') } };
