// @module-tag slow
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type ComponentType, h, options } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { PlainKey } from '../../../core/language/index.ts';
import { projectRoot } from '../../../main/tools/index.ts';
import { radiusOf, rest } from '../../../renderer/answers/index.ts';
import { demoSets } from '../../../renderer/demo/index.ts';
import { flexSheet, readingsOf } from '../../../renderer/files/index.ts';
import { demoEntries } from '../../../renderer/rack/index.ts';
import {
  changeSlope,
  chooseOnly,
  EMPTY_PROJECT,
  fileStem,
  load,
  project,
  t,
} from '../../../renderer/state/index.ts';
import { sheet as edgeSheet } from '../../../renderer/views/edge/sheet-state.ts';
import { exampleRows } from '../../../renderer/views/flex/bench-rows.ts';
import { pages, views } from '../../../renderer/views/index.ts';
import { sheet as setSheet } from '../../../renderer/views/set/set-state.ts';
import { sheet as slopeSheet } from '../../../renderer/views/slope/settings.ts';
import { difference, RECORDS, readRecord, recordOf, writeRecord } from './record.ts';

vi.mock('../../../renderer/answers/threads.ts', () => import('./in-place.ts'));
/** Every drawing gets the same room. */
vi.mock('../../../renderer/kit/use-size.ts', () => ({
  useSize: () => [{ current: null }, { width: 560, height: 320 }],
}));

/** `npm test -- --renew-charts` writes the records anew, which is done before looking at what changed in them. */
const renew = 'RENEW_CHARTS' in process.env;

interface Drawn {
  readonly where: string;
  readonly Stage: ComponentType;
  /** Brings the view to the sheet that is drawn. */
  set(): void;
}

const stageOf = (id: string) => views.find(view => view.id === id)!.Stage;
const nothing = () => {};
const edge = (sheet: typeof edgeSheet.value): Drawn => ({
  where: `edge ${sheet}`,
  Stage: stageOf('edge'),
  set: () => {
    edgeSheet.value = sheet;
  },
});
const slope = (sheet: typeof slopeSheet.value, programme: 'linked' | 'rhythm' = 'linked'): Drawn => ({
  where: `slope ${programme} ${sheet}`,
  Stage: stageOf('slope'),
  set: () => {
    changeSlope('Turns', { programme });
    slopeSheet.value = sheet;
  },
});
const flex = (sheet: typeof flexSheet.value, on: typeof rest.value = 'bench'): Drawn => ({
  where: `flex ${on} ${sheet}`,
  Stage: stageOf('flex'),
  set: () => {
    rest.value = on;
    flexSheet.value = sheet;
    if (sheet === 'readings') {
      const { id, pair } = project.value.rack[0]!;
      readingsOf(id).value = exampleRows(s => 60 + 400 * s * (1.36 - s), pair.contactLengthMm / 1000);
    }
  },
});

const ALL: readonly Drawn[] = [
  { where: 'shape', Stage: stageOf('shape'), set: nothing },
  flex('stiffness'),
  flex('stiffness', 'table'),
  flex('modes'),
  flex('readings'),
  edge('radius'),
  edge('pressure'),
  edge('twist'),
  edge('hold'),
  edge('boot'),
  edge('flat'),
  slope('traces'),
  slope('plan'),
  slope('binding'),
  slope('programme'),
  slope('traces', 'rhythm'),
  slope('plan', 'rhythm'),
  {
    where: 'set',
    Stage: stageOf('set'),
    set: () => {
      setSheet.value = 'along';
    },
  },
  { where: 'compare', Stage: pages.compare.Stage, set: nothing },
];

/** Draws a view until nothing it asks is under way any more. */
async function drawn({ Stage, set }: Drawn): Promise<string> {
  set();
  let html = '';
  let before: string;
  do {
    before = html;
    html = renderToString(h(Stage, {}));
    await vi.runAllTimersAsync();
  } while (html !== before);
  return html;
}

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
  const { unmount } = options;
  beforeAll(() => {
    vi.useFakeTimers();
    vi.stubGlobal('document', {
      documentElement: { dataset: {} },
      body: {},
      createElement: () => ({ getContext: () => null }),
    });
    vi.stubGlobal('window', { addEventListener: nothing });
    vi.stubGlobal('getComputedStyle', () => ({ fontSize: '16px', getPropertyValue: () => '' }));
    // What is drawn to text is taken off at once, and nothing would follow what it asks.
    options.unmount = undefined;
    const rack = demoEntries();
    const [first] = rack;
    const other = rack.find(({ pair }) => pair.discipline === 'GS' && radiusOf(pair) !== null)!;
    // Few gates: what is drawn of a run is the same for many.
    const course = { ...demoSets.SL, gates: demoSets.SL.gates.slice(0, 5) };
    load(chooseOnly([first!.id, other.id])({ ...EMPTY_PROJECT, rack, course }));
  });
  afterAll(() => {
    options.unmount = unmount;
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  test.each(ALL)('$where', async view => {
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
