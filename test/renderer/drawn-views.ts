import { type ComponentType, h, options } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { vi } from 'vitest';
import { radiusOf, rest } from '../../renderer/answers/index.ts';
import { demoSets } from '../../renderer/demo/index.ts';
import { flexSheet } from '../../renderer/files/index.ts';
import { demoEntries } from '../../renderer/rack/index.ts';
import {
  changeSlope,
  chooseOnly,
  EMPTY_PROJECT,
  load,
  project,
  readingsOf,
  t,
} from '../../renderer/state/index.ts';
import { sheet as edgeSheet } from '../../renderer/views/edge/sheet-state.ts';
import { exampleRows } from '../../renderer/views/flex/bench-rows.ts';
import { pages, views } from '../../renderer/views/index.ts';
import { sheet as setSheet } from '../../renderer/views/set/set-state.ts';
import { sheet as slopeSheet } from '../../renderer/views/slope/settings.ts';

/** A view at one of its sheets. */
export interface Drawn {
  readonly where: string;
  readonly Stage: ComponentType;
  /** Brings the view to the sheet that is drawn. */
  set(): void;
}

const stageOf = (id: string) => views.find(view => view.id === id)!.Stage;
export const nothing = (): void => {};
const edge = (sheet: typeof edgeSheet.value): Drawn => ({
  where: `edge ${sheet}`,
  Stage: stageOf('edge'),
  set: () => {
    edgeSheet.value = sheet;
  },
});
export const slope = (sheet: typeof slopeSheet.value, programme: 'linked' | 'rhythm' = 'linked'): Drawn => ({
  where: `slope ${programme} ${sheet}`,
  Stage: stageOf('slope'),
  set: () => {
    changeSlope(t('slope.turns'), { programme });
    slopeSheet.value = sheet;
  },
});
export const flex = (sheet: typeof flexSheet.value, on: typeof rest.value = 'bench'): Drawn => ({
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

export const set = (sheet: typeof setSheet.value): Drawn => ({
  where: `set ${sheet}`,
  Stage: stageOf('set'),
  set: () => {
    setSheet.value = sheet;
  },
});

/** Every sheet of every view that holds a chart. */
export const CHARTED: readonly Drawn[] = [
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
  { ...set('along'), where: 'set' },
  { where: 'compare', Stage: pages.compare.Stage, set: nothing },
];

/** Draws a view until nothing it asks is under way any more. */
export async function drawn({ Stage, set }: Pick<Drawn, 'Stage' | 'set'>): Promise<string> {
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

const { unmount } = options;

/** Draws to text from here on: no page, the clock moved by hand, two of the demo pairs chosen. */
export function beginDrawing(): void {
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
}

export function endDrawing(): void {
  options.unmount = unmount;
  vi.unstubAllGlobals();
  vi.useRealTimers();
}
