import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { languages } from '../core/language/index.ts';

const root = new URL('..', import.meta.url).pathname;

/** Rooms that speak by key alone. */
const ROOMS = [
  ...['answers', 'controls', 'files', 'frame', 'help', 'host', 'kit', 'print', 'rack', 'rules', 'scene'].map(
    room => `renderer/${room}`,
  ),
  ...['squad', 'state', 'theme'].map(room => `renderer/${room}`),
  ...['board', 'compare', 'edge', 'flex', 'set', 'shape', 'slope'].map(view => `renderer/views/${view}`),
  ...['calc', 'disk', 'electron', 'host', 'tools', 'web'].map(room => `main/${room}`),
];

/** What programs read: headings that the import reads back, what crosses from one process to another; and licences. */
const FORMATS = new Set([
  'renderer/squad/save-table.ts',
  'renderer/views/flex/layup-rows.ts',
  'main/electron/channel.ts',
  'main/electron/page-protocol.ts',
  'main/host/messages.ts',
  'main/tools/notices.ts',
  'main/web/content-policy.ts',
]);

/** Names that are no words: of programs and formats, and what documents of the command line hold. */
const NAMES =
  /^(Google Chrome|Microsoft Edge|Brave Browser|Library)\b|; charset=utf-8$|^(first reading|cosine rule|body weights)$/;

/** Properties and attributes whose texts no person reads. */
const UNREAD =
  /^(class|className|id|key|type|kind|style|transform|d|points|viewBox|fill|stroke|mime|href|rel|role|name|autoComplete|inputMode|format|stroke-dasharray|htmlFor|for|list|accept|tex|end|fields)$/;
/** Properties and attributes whose every text a person reads. */
const READ =
  /^(label|title|aria-label|aria-valuetext|placeholder|alt|note|hint|heading|why|none|empty|description|said|text|caption)$/;
/** Calls whose first text a person reads: reports, and steps that undo names. */
const SPOKEN =
  /^(report|edit|changeCourse|changeSlope|changeRules|changePair|changeConditions|changeBoard|showWorking|axisTitle)$/;
/** What looks like a text and is none: a key, a selector of elements, a name the program gives itself. */
const isNone = (text: string): boolean =>
  Object.hasOwn(languages.en.texts, text) ||
  /^[.#]|\[\w+[=\]]/.test(text) ||
  /^turnwright( \w+)?$/i.test(text) ||
  NAMES.test(text) ||
  KEY_IN_PIECES.test(text) ||
  NOTATION.test(text);

/** A key with a part that is chosen. */
const KEY_IN_PIECES = /^[a-z]+(\.\w+)*\. 0 (\.\w+)*$/i;

/** Fonts, questions to the browser and programs of the graphics card. */
const NOTATION = /\b(sans-serif|prefers-\w+|vec[34])\b/;

const LETTERS = /\p{L}{2,}/u;
const TWO_WORDS = /\p{L}{2,}[,;:.]? \p{L}{2,}/u;

/** A text as it stands in the source, values of a template left out; null for what is no text. */
function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteralLike(node) || ts.isJsxText(node)) return node.text;
  if (ts.isTemplateExpression(node))
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join(' 0 ');
  return null;
}

const nameOf = (node: ts.JsxAttribute | ts.PropertyAssignment): string =>
  node.name.getText().replace(/^'|'$/g, '');

/** Texts of a source that a person would read in English whatever the language: the line and the text of each. */
function bareTexts(source: string, file = 'x.tsx'): string[] {
  const parsed = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node, read: boolean): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    // Mistakes of a programmer, and requests given up.
    if (ts.isNewExpression(node) && /^(RangeError|TypeError|Superseded)$/.test(node.expression.getText()))
      return;
    const text = textOf(node);
    if (text !== null) {
      const bare = (read || ts.isJsxText(node) ? LETTERS : TWO_WORDS).test(text) && !isNone(text.trim());
      if (bare) {
        const { line } = parsed.getLineAndCharacterOfPosition(node.getStart());
        found.push(`${line + 1}: ${text.trim()}`);
      }
    }
    // What is compared is not shown.
    if (ts.isBinaryExpression(node) && /^[!=]==$/.test(node.operatorToken.getText())) return;
    if (ts.isCallExpression(node)) {
      const called = node.expression.getText().split('.').at(-1)!;
      // Keys, selectors and pieces of a shape are arguments too.
      node.arguments.forEach((argument, at) => {
        visit(argument, at === 0 && SPOKEN.test(called));
      });
      visit(node.expression, false);
      return;
    }
    if (ts.isJsxAttribute(node) || ts.isPropertyAssignment(node)) {
      const name = nameOf(node);
      if (UNREAD.test(name)) return;
      if (node.initializer) visit(node.initializer, READ.test(name));
      return;
    }
    const passesOn =
      ts.isConditionalExpression(node) ||
      ts.isParenthesizedExpression(node) ||
      ts.isJsxExpression(node) ||
      ts.isTemplateSpan(node) ||
      (ts.isBinaryExpression(node) && /^(\|\||&&|\?\?|\+)$/.test(node.operatorToken.getText()));
    ts.forEachChild(node, child => visit(child, read && passesOn && !isCondition(node, child)));
  };
  visit(parsed, false);
  return found;
}

const isCondition = (node: ts.Node, child: ts.Node): boolean =>
  (ts.isConditionalExpression(node) && child === node.condition) ||
  (ts.isBinaryExpression(node) && node.operatorToken.getText() === '&&' && child === node.left);

async function sourcesOf(room: string): Promise<string[]> {
  const files = await readdir(join(root, room), { recursive: true });
  return files
    .filter(file => /\.tsx?$/.test(file) && !FORMATS.has(`${room}/${file}`))
    .map(file => join(root, room, file));
}

/** Who may bind `say` of core to a language and to units; everybody else asks them. */
const BOUND = new Set(['main/host/say.ts', 'renderer/state/words.ts']);

describe('words', () => {
  it('are put into a language in one place, and into the units of the page in another', async () => {
    const unbound: string[] = [];
    for (const room of ['main', 'renderer']) {
      for (const file of await sourcesOf(room)) {
        const name = file.slice(root.length);
        const asks = /import (?!type)[^;]*\bsay(All)?\b[^;]*core\/language\/index\.ts/.test(
          await readFile(file, 'utf8'),
        );
        if (asks && !BOUND.has(name)) unbound.push(name);
      }
    }
    expect(unbound).toEqual([]);
  });

  it.each(ROOMS)('of %s all come from core/language', async room => {
    const bare: string[] = [];
    for (const file of await sourcesOf(room)) {
      const texts = bareTexts(await readFile(file, 'utf8'), file);
      bare.push(...texts.map(text => `${file.slice(root.length)}:${text}`));
    }
    expect(bare).toEqual([]);
  });

  it.each([
    ['a text', '<p>Nothing is due.</p>'],
    ['a label', '<Choice label="Owner" />'],
    ['a label that depends', "<Choice label={active ? 'Save' : name} />"],
    ['a label made of pieces', "<Choice label={'Save ' + name} />"],
    ['a fallback', "<Choice title={name ?? 'Sheet'} />"],
    ['a report', "report('Saved', 'error')"],
    ['a step', "edit('Edit ' + name, change)"],
    ['a sentence anywhere', "const why = known ? 'it is damaged and cannot be read' : null"],
    ['a list of labels', "const options = [{ value: 'all', label: 'All' }]"],
  ])('are found where they are bare: %s', (_, source) => {
    expect(
      bareTexts(
        `const x = (name, active, known, change) => { ${source.startsWith('<') ? `return ${source}` : source} }`,
      ),
    ).toHaveLength(1);
  });

  it.each([
    '<p class="rack empty">{t(\'rack.empty\')}</p>',
    "<Choice label={t('common.owner')} value={kind === 'all' ? 1 : 2} />",
    '<Choice label={t(active ? "frame.help" : "frame.board")} />',
    'edit(t("rack.choose", { name }), change)',
    '<p>{name} ↑ 12 %</p>',
  ])('by key are none: %s', source => {
    expect(
      bareTexts(
        `const x = (name, kind, active, change) => { ${source.startsWith('<') ? `return ${source}` : source} }`,
      ),
    ).toEqual([]);
  });
});
