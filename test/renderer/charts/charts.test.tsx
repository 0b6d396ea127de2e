// @module-tag slow
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { PlainKey } from '../../../core/language/index.ts';
import { projectRoot } from '../../../main/tools/index.ts';
import { fileStem, t } from '../../../renderer/state/index.ts';
import { beginDrawing, CHARTED, drawn, endDrawing } from '../drawn-views.ts';
import { difference, RECORDS, readRecord, recordOf, writeRecord } from './record.ts';

vi.mock('../../../renderer/answers/threads.ts', () => import('../in-place.ts'));
/** Every drawing gets the same room. */
vi.mock('../../../renderer/kit/use-size.ts', () => ({
  useSize: () => [{ current: null }, { width: 560, height: 320 }],
}));

/** `npm test -- --renew-charts` writes the records anew, which is done before looking at what changed in them. */
const renew = 'RENEW_CHARTS' in process.env;

/** The drawings of a view, by the title of their figure. */
function figuresIn(html: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const [figure] of html.matchAll(/<figure[\s\S]*?<\/figure>/g)) {
    const title = /<h2>(.*?)<\/h2>/.exec(figure)![1]!;
    const svg = /<svg[\s\S]*<\/svg>/.exec(figure)?.[0];
    if (svg) found.set(title, svg);
  }
  return found;
}

const seen = new Set<string>();
const recorded = new Set<string>();

describe('every chart of every view, on the demo pairs', () => {
  beforeAll(beginDrawing);
  afterAll(endDrawing);

  test.each(CHARTED)('$where', async view => {
    const figures = figuresIn(await drawn(view));
    expect(figures.size).toBeGreaterThan(0);
    for (const [title, svg] of figures) {
      const now = recordOf(svg);
      // A figure that stands over several sheets is recorded once.
      if (seen.has(now)) continue;
      seen.add(now);
      const name = fileStem(`${view.where} ${title}`);
      recorded.add(name);
      if (renew) writeRecord(name, now);
      const record = readRecord(name);
      expect(record, `${name} has no record: see "Adding" in DEVELOPERS.md`).not.toBeNull();
      expect(difference(now, record!), name).toBeNull();
    }
  });

  test('every record is of a chart', async () => {
    const files = (await readdir(RECORDS)).map(file => file.replace(/\.svg$/, ''));
    expect(files.filter(file => !recorded.has(file))).toEqual([]);
  });
});

test('a line out of place, and another word, are found; what rounding does is not', () => {
  const of = (x: number, word: string) =>
    recordOf(`<g><path d="M${x},4.04L9-2" class="line2"/><text>${word}</text></g>`);
  const record = of(10.02, '13.2 m');
  expect(record).toContain('d="M10,4L9-2"');
  expect(difference(of(10.4, '13.2 m'), record)).toBeNull();
  expect(difference(of(10.6, '13.2 m'), record)).toContain('line 2');
  expect(difference(of(10, '13.3 m'), record)).toContain('line 3');
  expect(difference(record.replace('line2', 'line3'), record)).toContain('line 2');
  expect(difference(record.split('\n').slice(1).join('\n'), record)).toContain('line 1');
});

test('no component draws a chart that is in no view drawn here', async () => {
  const entries = await readdir(join(projectRoot, 'renderer/views'), {
    recursive: true,
    withFileTypes: true,
  });
  const records = await readdir(RECORDS);
  const unseen: string[] = [];
  let charts = 0;
  for (const entry of entries.filter(({ name }) => name.endsWith('.tsx'))) {
    const source = await readFile(join(entry.parentPath, entry.name), 'utf8');
    for (const [, key] of source.matchAll(/<(?:Chart|Figure)\n\s+title=\{t\('([^']+)'\)\}/g)) {
      charts += 1;
      const title = t(key as PlainKey);
      if (!records.some(record => record.endsWith(`-${fileStem(title)}.svg`)))
        unseen.push(`${entry.name}: ${title}`);
    }
  }
  expect(unseen).toEqual([]);
  expect(charts).toBeGreaterThan(10);
});
