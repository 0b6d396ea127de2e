/** What may end a selector such as `one` or `=0`: its brace follows at once, that of a placeholder never does. */
type EndOfSelector =
  | 'a'
  | 'b'
  | 'c'
  | 'd'
  | 'e'
  | 'f'
  | 'g'
  | 'h'
  | 'i'
  | 'j'
  | 'k'
  | 'l'
  | 'm'
  | 'n'
  | 'o'
  | 'p'
  | 'q'
  | 'r'
  | 's'
  | 't'
  | 'u'
  | 'v'
  | 'w'
  | 'x'
  | 'y'
  | 'z'
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9';

/** The placeholder that a text begins with, its opening brace taken off: its name and how it is formatted. */
type Opened<Text extends string> = Text extends `${infer Inside}}${string}`
  ? Inside extends `${infer Name}, ${infer How}, ${string}`
    ? readonly [name: Name, how: How]
    : readonly [name: Inside, how: 'plain']
  : never;

/**
 * The placeholders of a message in ICU MessageFormat, as pairs of name and format. Selectors of a plural or a select
 * are written close to their brace (`{n, plural, one{# pair} other{# pairs}}`), which tells them from placeholders.
 */
export type Placeholders<Text extends string> = Text extends `${infer Before}{${infer Rest}`
  ? (Before extends `${string}${EndOfSelector}` ? never : Opened<Rest>) | Placeholders<Rest>
  : never;
