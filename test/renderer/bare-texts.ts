/** Attributes that are said or shown to a person. */
const SAID = /\s(?:aria-label|aria-valuetext|aria-description|title|alt|placeholder|label)="([^"]*)"/g;

/** Texts of a page: what stands between its tags, and what its attributes say. Formulas are in no language. */
function textsIn(html: string): string[] {
  const page = html.replace(/<math[\s\S]*?<\/math>/g, ' ').replace(/<(style|code)[\s\S]*?<\/\1>/g, ' ');
  const said = [...page.matchAll(SAID)].map(([, text]) => text!);
  const shown = page
    // What is set in one line is one text.
    .replace(/<\/?(?:tspan|b|em|strong|span|sup|sub)\b[^>]*>/g, '')
    .split(/<[^>]*>/);
  return [...said, ...shown];
}

/** Units, symbols and signs that every language writes alike, and the program's name. */
const ALIKE =
  /(?<!\p{L})(?:Turnwright|mm|cm|m|km|kg|g|N|Nm|kN|J|kJ|Hz|s|ms|h|kPa|GPa|rad|deg|in|ft|lb|lbf|mph|body weight|EI|GJ|L_TOT|LTOT|LW|SL|GS|SG|DH|CSV|PNG|SVG|PDF|WebGL|Ctrl|Esc|Home|End|Enter|Shift|Space|Delete|Page|cos|abs)(?!\p{L})/gu;

/** Fields of files, as people type them in a heading. */
const FIELD = /(?<!\p{L})[a-z]+(?:[A-Z][A-Za-z]*\d*)+(?!\p{L})/gu;

/**
 * Texts of a page that a reader of another language would meet in English, where that language is `pseudo`, which has a
 * mark on each of its letters; `names` are what people gave.
 */
export function bareTexts(html: string, names: readonly string[]): string[] {
  const found = textsIn(html).flatMap(text => {
    let rest = text;
    for (const name of names) rest = rest.replaceAll(name, ' ');
    rest = rest
      .replace(/&#?\w+;/g, ' ')
      .replace(FIELD, ' ')
      .replace(ALIKE, ' ');
    return /[A-Za-z]{2,}/.test(rest) ? [text.trim()] : [];
  });
  return [...new Set(found)];
}
