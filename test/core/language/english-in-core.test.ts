import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { projectRoot } from '../../../main/tools/index.ts';

/**
 * A text of four words or more, or of two that begin with a capital, is English for a reader; a formula, its TeX, a
 * unit or the short name of a thing in the code is not.
 */
function isEnglish(text: string): boolean {
  const words = text.match(/(?<![\p{L}\d_.(\\])\p{L}{2,}(?![\p{L}\d_(])/gu) ?? [];
  return (
    / /.test(text.trim()) && (words.length > 3 || (words.length > 1 && /^\p{Lu}\p{Ll}/u.test(text.trim())))
  );
}

/** The texts of a source that say something in English; comments and types say nothing to a reader. */
function englishIn(source: string): string[] {
  const file = ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || isProgrammersError(node)) return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      if (isEnglish(node.text)) found.push(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** An error that only a mistake of a programmer can bring about is no text for a reader. */
const isProgrammersError = (node: ts.Node): boolean =>
  ts.isNewExpression(node) && /^(Range|Type)?Error$/.test(node.expression.getText());

/** What may hold English, each with its reason. */
const ALLOWED: Readonly<Record<string, string>> = {
  'language/': 'the texts themselves',
  'fault/field-error.ts': 'the message of a stack trace',
  'line/line-model.ts': 'names of limits, which a failure is looked up by',
  'run/run-formula.ts': 'names of limits, which a failure is looked up by',
  'skier/limit-sentence.ts': 'names of limits, which a failure is looked up by',
  'pair/json-schema.ts': 'the JSON Schema of the pair file, which is in English as its fields are',
  'pair/pair-schema.ts': 'the JSON Schema of the pair file',
  'pair/plate-schema.ts': 'the JSON Schema of the pair file',
  'pair/rack-file.ts': 'meanings of fields, as in the JSON Schema',
  'pair/stiffness-schema.ts': 'the JSON Schema of the pair file',
  'rules/control-radius.ts': 'how the procedure ends, as the command line’s documents name it',
  'rules/edition-words.ts': 'texts of editions, as a person would write them in a file',
  'rules/limit-verdict.ts': 'verdicts, as the command line’s documents name them',
  'working/check.ts': 'what a test says of a working to whoever wrote it',
  'working/own-result.ts': 'what a test says of a working to whoever wrote it',
};

const isAllowed = (name: string): boolean =>
  Object.keys(ALLOWED).some(path => (path.endsWith('/') ? name.startsWith(path) : name === path));

async function englishInCore(): Promise<Record<string, string[]>> {
  const core = join(projectRoot, 'core');
  const entries = await readdir(core, { recursive: true, withFileTypes: true });
  const names = entries
    .filter(entry => entry.name.endsWith('.ts'))
    .map(entry => relative(core, join(entry.parentPath, entry.name)))
    .filter(name => !isAllowed(name))
    .toSorted();
  const found: Record<string, string[]> = {};
  for (const name of names) {
    const texts = englishIn(await readFile(join(core, name), 'utf8'));
    if (texts.length > 0) found[name] = texts;
  }
  return found;
}

test('core speaks no English outside language/', async () => {
  expect(await englishInCore()).toEqual({});
});

describe('English is noticed', () => {
  test.each([
    "export const words = 'the edge lets go';",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source
    'export const words = `at ${speed} grip ends here and now`;',
  ])('%s', source => {
    expect(englishIn(source)).toHaveLength(1);
  });

  test.each([
    "export const formula = 'm * g * cos(alpha)';",
    "/** The edge lets go. */ export type Kind = 'lets go';",
    "throw new RangeError('points are out of order');",
    "export const unit = 'N·m²';",
    "export const tex = '\\\\langle \\\\sin\\\\alpha\\\\rangle = \\\\frac{\\\\cos\\\\beta}{2}';",
  ])('but not %s', source => {
    expect(englishIn(source)).toEqual([]);
  });
});
