import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../../main/tools/index.ts';

const read = (path: string) => readFileSync(join(projectRoot, path), 'utf8');
const DOCUMENT = 'DEVELOPERS.md';

/** `path:line` and behind it what the line holds. */
const NAMED = /`([\w./-]+):(\d+)` `([^`]+)`/g;
const NOWHERE = /nowhere `([^`]+)`/g;

/** The section of the document, from its heading on. */
function section(text: string): string {
  const from = text.indexOf("## The desktop shell's security");
  const to = text.indexOf('\n## ', from + 1);
  return text.slice(from, to < 0 ? undefined : to);
}

/** What is wrong with a section, a line each. */
function wrong(text: string): string[] {
  const found: string[] = [];
  for (const [, path = '', line, held = ''] of text.matchAll(NAMED)) {
    const there = read(path).split('\n')[Number(line) - 1] ?? '';
    if (!there.includes(held)) found.push(`${path}:${line} holds "${there.trim()}", not "${held}"`);
  }
  const sources = readdirSync(join(projectRoot, 'main'), { recursive: true, encoding: 'utf8' }).filter(name =>
    name.endsWith('.ts'),
  );
  for (const [, word = ''] of text.matchAll(NOWHERE)) {
    for (const name of sources)
      if (read(join('main', name)).includes(word)) found.push(`${word} in main/${name}`);
  }
  return found;
}

if (process.env.RENEW_CHECKLIST) {
  const text = read(DOCUMENT);
  const renewed = section(text).replace(NAMED, (whole, path: string, line: string, held: string) => {
    const lines = read(path).split('\n');
    const at = lines.findIndex(each => each.includes(held));
    return at < 0 ? whole : whole.replace(`:${line}\``, `:${at + 1}\``);
  });
  writeFileSync(
    join(projectRoot, DOCUMENT),
    text.replace(section(text), () => renewed),
  );
}

test('every item of the security checklist stands at the file and line that are named', () => {
  const text = section(read(DOCUMENT));
  const items = text.split('\n').filter(line => /^\| \d+ \|/.test(line));
  expect(items.map(line => Number(/\d+/.exec(line)![0]))).toEqual(
    Array.from({ length: 20 }, (_, at) => at + 1),
  );
  for (const item of items) expect(item).toMatch(/`[\w./-]+:\d+` `[^`]+`|nowhere `[^`]+`/);
  expect(wrong(text)).toEqual([]);
});

test('a line that has moved, or a word that has come in, is seen', () => {
  expect(wrong('`main/electron/window.ts:1` `sandbox: true`')).toHaveLength(1);
  expect(wrong('nowhere `contextIsolation`')).toEqual([expect.stringContaining('window.ts')]);
});
