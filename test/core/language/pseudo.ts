import type { Key, Language } from '../../../core/language/index.ts';

/** Each letter with a mark on it, so that it is read all the same and told from plain text. */
const MARKED: Readonly<Record<string, string>> = Object.fromEntries(
  [...'áƀćďéƒǵĥíĵķĺɱńóƥɋŕśťúṽẃẋýź'].map((marked, at) => [String.fromCharCode(97 + at), marked]),
);
const CAPITALS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(MARKED).map(([plain, marked]) => [plain.toUpperCase(), marked.toUpperCase()]),
);

/** How much longer than English other languages are. */
const LONGER = 0.35;

/** Where a text of `pseudo` begins and ends. */
const OPEN = '⟦';
const CLOSE = '⟧';

/** The letters of a message marked; what stands in braces stays, but for the messages that selectors open. */
function marked(message: string): string {
  let out = '';
  /** Of every open brace, whether a selector opened it. */
  const opened: boolean[] = [];
  for (const letter of message) {
    if (letter === '{') opened.push(/[a-z0-9]$/i.test(out.normalize('NFD').replace(/\p{M}$/u, '')));
    if (letter === '}') opened.pop();
    out += opened.at(-1) === false ? letter : (MARKED[letter] ?? CAPITALS[letter] ?? letter);
  }
  return out;
}

/** A message in brackets, marked and made longer as other languages are; its placeholders stay. */
export function pseudo(message: string): string {
  const letters = message.replace(/\{[^}]*\}/g, '').match(/\p{L}/gu)?.length ?? 0;
  const more = '·'.repeat(Math.ceil(letters * LONGER));
  return `${OPEN}${marked(message)}${more}${CLOSE}`;
}

/** A language made from another: what is not bracketed on a page drawn in it did not come from there. */
export const pseudoOf = ({ locale, texts }: Language): Language => ({
  locale,
  texts: Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, pseudo(text)])) as Record<
    Key,
    string
  >,
});
