import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../main/tools/index.ts';

/** Degrees, km/h and N/mm³ made into SI, or back, by hand. */
const BY_HAND = [
  /Math\.PI\)? ?\/ ?180\b/,
  /\b180\)? ?\/ ?Math\.PI/,
  /[*/] ?3\.6\b|\b3\.6 ?\*/,
  /[*/] ?1e9\b/,
];

/** Millimetres and grams, in the page: what is a thousand of something else is written in front of it. */
const BY_HAND_IN_PAGE = [...BY_HAND, /[*/] ?(?:1e-?3|1000|2e3|2000)\b/];
/** Times of the browser are in milliseconds. */
const NO_LENGTHS = ['renderer/views/slope/clock.ts'];

const byHand = (source: string, patterns = BY_HAND): string[] =>
  source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .split('\n')
    .map(line => line.replace(/\/\/.*$/, ''))
    .filter(line => patterns.some(pattern => pattern.test(line)))
    .map(line => line.trim());

test('units become SI by core/units and core/conditions, nowhere by hand', async () => {
  const found: string[] = [];
  for (const folder of ['core', 'main', 'renderer']) {
    const entries = await readdir(join(projectRoot, folder), { recursive: true, withFileTypes: true });
    for (const entry of entries.filter(({ name }) => /\.tsx?$/.test(name))) {
      const path = join(entry.parentPath, entry.name);
      const at = relative(projectRoot, path);
      if (at.startsWith(join('core', 'units'))) continue;
      const inPage =
        folder === 'renderer' && !at.startsWith(join('renderer', 'scene')) && !NO_LENGTHS.includes(at);
      const lines = byHand(await readFile(path, 'utf8'), inPage ? BY_HAND_IN_PAGE : BY_HAND);
      found.push(...lines.map(line => `${at}: ${line}`));
    }
  }
  expect(found).toEqual([]);
});

test.each([
  'const edge = (deg * Math.PI) / 180;',
  'const deg = (rad * 180) / Math.PI;',
  'const speed = kmh / 3.6;',
  'const text = (3.6 * speed).toFixed(0);',
  'const hardness = perMm3 * 1e9;',
])('a factor by hand is found: %s', line => {
  expect(byHand(`${line}\n`)).toEqual([line]);
});

test.each(['const at = shareMm / 1000;', 'rows.push((x * 1e3).toFixed(1));', 'y: (widthMm / 2000)'])(
  'in the page, a length made into mm by hand is found: %s',
  line => {
    expect(byHand(`${line}\n`, BY_HAND_IN_PAGE)).toEqual([line]);
  },
);
