import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { describe, expect, test } from 'vitest';
import { projectRoot } from '../main/tools/index.ts';

const { forbidden, options } = createRequire(import.meta.url)('./dependency-cruiser.cjs');

/** Breaches of the rules among the files under `baseDir`, one line each. */
async function breaches(baseDir: string, folders: string[]): Promise<{ lines: string[]; modules: number }> {
  const { output } = await cruise(folders, {
    ...options,
    baseDir,
    validate: true,
    ruleSet: { forbidden },
  });
  const { summary, modules } = output as ICruiseResult;
  const lines = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`);
  return { lines, modules: modules.length };
}

/** What core must not touch: names of the page, of Node, the clock and unseeded chance. */
const beyondCore =
  /\b(document|window|navigator|localStorage|fetch|process|Buffer|require|setTimeout|setInterval|performance)\s*[.(]|\bDate\b|\bMath\.random\b|\bglobalThis\b/;

async function sourcesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter(entry => /\.tsx?$/.test(entry.name)).map(entry => join(entry.parentPath, entry.name));
}

function withoutComments(source: string): string {
  return source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\/\/.*$/gm, '')
    .replace(/'[^'\n]*'/g, "''");
}

describe('architecture', () => {
  test('every import follows the arrows between the rooms', async () => {
    const { lines, modules } = await breaches(projectRoot, ['core', 'main', 'renderer']);
    expect(lines).toEqual([]);
    expect(modules).toBeGreaterThan(40);
  });

  test('core names nothing of the page, of Node, of the clock or of chance', async () => {
    const offenders: string[] = [];
    for (const file of await sourcesIn(join(projectRoot, 'core'))) {
      const found = withoutComments(await readFile(file, 'utf8')).match(beyondCore);
      if (found) offenders.push(`${file}: ${found[0]}`);
    }
    expect(offenders).toEqual([]);
  });

  test('every file stays well under 350 lines', async () => {
    const long: string[] = [];
    for (const folder of ['core', 'main', 'renderer']) {
      for (const file of await sourcesIn(join(projectRoot, folder))) {
        const lines = (await readFile(file, 'utf8')).split('\n').length;
        if (lines > 350) long.push(`${file}: ${lines} lines`);
      }
    }
    expect(long).toEqual([]);
  });
});

describe('the rules notice', () => {
  const files = {
    'core/numeric/index.ts': 'export const one = 1;',
    'core/numeric/hidden.ts': 'export const two = 2;',
    'core/shape/index.ts': "export { one } from '../numeric/index.ts';",
    'core/working/index.ts': 'export interface Working { key: string }',
  };

  test.each([
    [
      'an arrow that turns round',
      'core/numeric/back.ts',
      "export { one as x } from '../shape/index.ts';",
      'numeric-arrow',
    ],
    [
      'a type arrow that turns round',
      'core/numeric/back.ts',
      "import type { one } from '../shape/index.ts'; export type X = typeof one;",
      'numeric-type-arrow',
    ],
    [
      'a wall climbed beside the door',
      'core/shape/wall.ts',
      "export { two } from '../numeric/hidden.ts';",
      'by-the-door',
    ],
    [
      'the same from outside',
      'main/wall.ts',
      "export { two } from '../core/numeric/hidden.ts';",
      'by-the-door-from-outside',
    ],
    ['Node in core', 'core/shape/node.ts', "export { readFileSync } from 'node:fs';", 'core-without-node'],
    [
      'main in core',
      'core/shape/main.ts',
      "export { three } from '../../main/three.ts';",
      'core-stands-alone',
    ],
    [
      'the shell in the renderer',
      'renderer/shell.ts',
      "export { three } from '../main/three.ts';",
      'renderer-knows-only-the-host-seam',
    ],
  ])('%s', async (_what, file, source, rule) => {
    const baseDir = await mkdtemp(join(tmpdir(), 'turnwright-rooms-'));
    const all = {
      ...files,
      'main/three.ts': 'export const three = 3;',
      'renderer/page.ts': 'export {};',
      [file]: source,
    };
    for (const [name, text] of Object.entries(all)) {
      await mkdir(dirname(join(baseDir, name)), { recursive: true });
      await writeFile(join(baseDir, name), text);
    }
    const { lines } = await breaches(baseDir, ['core', 'main', 'renderer']);
    await rm(baseDir, { recursive: true });
    expect(lines.filter(line => line.startsWith(`${rule}: ${file}`))).toHaveLength(1);
  });

  test('nothing where nothing is wrong', async () => {
    const baseDir = await mkdtemp(join(tmpdir(), 'turnwright-rooms-'));
    const explained = {
      'core/shape/working.ts': "import type { Working } from '../working/index.ts'; export type W = Working;",
    };
    for (const [name, text] of Object.entries({ ...files, ...explained })) {
      await mkdir(dirname(join(baseDir, name)), { recursive: true });
      await writeFile(join(baseDir, name), text);
    }
    const { lines, modules } = await breaches(baseDir, ['core']);
    await rm(baseDir, { recursive: true });
    expect({ lines, modules }).toEqual({ lines: [], modules: 5 });
  });

  test('a clock or chance in a source', () => {
    for (const source of ['const t = Date.now();', 'Math.random()', 'document.title', 'process.exit(1)']) {
      expect(source).toMatch(beyondCore);
    }
    expect(withoutComments('// a window. \nconst update = 1; /* Date */')).not.toMatch(beyondCore);
  });
});
