// @module-tag slow

import { readdirSync, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { packageOf } from '../../../main/tools/bundled-packages.ts';
import { builtPage, ensureBuilt, noticesFile, projectRoot } from '../../../main/tools/index.ts';
import { bundledPackages, noticesText } from '../../../main/tools/notices.ts';

beforeAll(() => ensureBuilt(() => {}));

/** Packages that our own sources name, types left out. */
function namedPackages(): Set<string> {
  const named = new Set<string>();
  for (const room of ['core', 'main/electron', 'main/host', 'renderer']) {
    for (const file of readdirSync(join(projectRoot, room), { recursive: true, encoding: 'utf8' })) {
      if (!/\.tsx?$/.test(file) || file.endsWith('vite.config.ts')) continue;
      const text = readFileSync(join(projectRoot, room, file), 'utf8');
      for (const [, name] of text.matchAll(
        /^(?:import|export) (?!type )[^;]*?from '((?:@[^/']+\/)?[^./'][^/']*)/gm,
      )) {
        if (!name!.startsWith('node:') && name !== 'electron') named.add(name!);
      }
    }
  }
  return named;
}

test('every package that our sources name, and what those bring, has its licence in the notices', () => {
  const notices = readFileSync(noticesFile, 'utf8');
  const named = namedPackages();
  expect(named.size).toBeGreaterThan(6);
  // d3 is a name for its parts, which are bundled each on its own.
  const missing = [...named].filter(name => !notices.includes(name === 'd3' ? '\nd3-shape 3' : `\n${name} `));
  expect(missing).toEqual([]);
  expect(notices).toContain('\ntyped-function ');
  // mathjs asks for its NOTICE.
  expect(notices).toContain(readFileSync(join(projectRoot, 'node_modules/mathjs/NOTICE'), 'utf8').trim());
  expect(readFileSync(join(builtPage, 'third-party-notices.txt'), 'utf8')).toBe(notices);
});

test('a module belongs to the innermost package', () => {
  expect(packageOf('/a/node_modules/three/build/three.module.js')).toBe('/a/node_modules/three');
  expect(packageOf('\0/a/node_modules/@preact/signals/x.js?commonjs')).toBe(
    '/a/node_modules/@preact/signals',
  );
  expect(packageOf('/a/node_modules/mathjs/node_modules/one/i.js')).toBe(
    '/a/node_modules/mathjs/node_modules/one',
  );
  expect(packageOf('/a/core/pair/index.ts')).toBeNull();
});

test('a package without any licence stops the build', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'turnwright-notices-'));
  const bare = join(folder, 'node_modules/bare');
  await mkdir(bare, { recursive: true });
  await mkdir(join(folder, 'bundled'));
  await writeFile(join(bare, 'package.json'), '{"name":"bare","version":"1.0.0","license":"Apache-2.0"}');
  await writeFile(join(folder, 'bundled/a.json'), JSON.stringify([bare]));
  expect(() => bundledPackages(join(folder, 'bundled'))).toThrow('bare');
  await writeFile(join(bare, 'NOTICE.md'), 'Made by hand.');
  expect(noticesText(bundledPackages(join(folder, 'bundled')))).toContain('bare 1.0.0 (Apache-2.0)');
});
