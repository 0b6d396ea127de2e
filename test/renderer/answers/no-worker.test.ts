// @module-tag slow
import { effect } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { bendingCompliance } from '../../../core/flex/index.ts';
import { bendable } from '../../../renderer/answers/beam.ts';
import {
  beamOf,
  boardBends,
  grooves,
  hillBends,
  identified,
  largeBend,
  modesOf,
  rest,
  retryAll,
  runs,
  scope,
  setRuns,
  tableCurves,
  tableOf,
  tableShown,
  threadFailure,
  turningOf,
  turnModel,
  turnSource,
} from '../../../renderer/answers/index.ts';
import { demoPairs, demoSets } from '../../../renderer/demo/index.ts';
import {
  activePair,
  addEntries,
  changeConditions,
  chooseOnly,
  chosenPairs,
  conditions,
  EMPTY_PROJECT,
  inWords,
  load,
  project,
  readingsOf,
} from '../../../renderer/state/index.ts';
import { failWorkers, mendWorkers } from './stand-in-worker.ts';

const NO_WORKER = 'The calculation failed to start.';

const pairs = () => bendable(chosenPairs.value);
const one = () => activePair.value!;

/** Every answer that a view asks of a worker: what it says when none starts, and whether it is there. */
const request: Readonly<Record<string, { why?(): unknown; there(): boolean }>> = {
  'Flex: modes, free': {
    why: () => modesOf(pairs(), false).error,
    there: () => modesOf(pairs(), false).found !== null,
  },
  'Flex: modes, boot held': {
    why: () => modesOf(pairs(), true).error,
    there: () => modesOf(pairs(), true).found !== null,
  },
  'Flex: load on the flat table': {
    why: () => tableCurves.value.error,
    there: () => tableCurves.value.value !== null,
  },
  'Flex: large bend': { why: () => largeBend.value.error, there: () => largeBend.value.value?.ok === true },
  'Flex: readings': { why: () => identified.value.error, there: () => identified.value.value?.ok === true },
  'Edge: grooves': { why: () => grooves.value.fault, there: () => grooves.value.answers.size === 2 },
  'Edge: radius table': {
    why: () => tableShown(one()).failure,
    there: () => tableShown(one()).table !== null,
  },
  'Compare: turn': { why: () => turningOf(one()).state.failure, there: () => turningOf(one()).solved },
  'Slope: run': { why: () => runs.value.problem, there: () => runs.value.runs.length === 2 },
  'Slope: bends': { there: () => hillBends.every(bend => bend.value !== null) },
  'Board: turn': {
    why: () => inWords(turnSource(one(), conditions.value.hardnessNPerMm3).words),
    there: () => turnSource(one(), conditions.value.hardnessNPerMm3).model === 'answers.model.bent',
  },
  'Board: bends': { there: () => boardBends[0].value?.ok === true },
  'Set: quickest runs': { why: () => setRuns.value.error, there: () => setRuns.value.value !== null },
  'Sheet: radius table': {
    why: () => tableOf(one().pair, 3e9).value.failure,
    there: () => tableOf(one().pair, 3e9).value.table !== null,
  },
};

let follow = () => {};
let cases = 0;

beforeEach(() => {
  const entries = demoPairs.slice(1, 3).map((pair, i) => ({ id: `p${i}`, pair, saved: pair }));
  const course = { ...demoSets.SL, gates: demoSets.SL.gates.slice(0, 5) };
  load({ ...chooseOnly(['p0', 'p1'])(addEntries(entries)(EMPTY_PROJECT)), course });
  // No case finds what the one before was told.
  cases += 1;
  changeConditions('Snow', { hardnessNPerMm3: 1 + cases / 100, foreMm: cases, benchForeMm: cases });
  rest.value = 'table';
  turnModel.value = 'cosine';
  scope.value = 'rack';
  const { contactLength } = one().ski;
  const bending = beamOf(one().pair).bending!;
  readingsOf(one().id).value = [
    'loadFromTailMm,loadN,dialFromTailMm,deflectionMm',
    ...[0.2, 0.35, 0.5, 0.65, 0.8].map(share => {
      const at = Math.round(share * contactLength * 1e3);
      const down = 100 * bendingCompliance(bending, 0, contactLength, at / 1e3);
      return `${at},100,${at},${(down * 1e3).toFixed(2)}`;
    }),
  ].join('\n');
});

afterEach(() => {
  follow();
  mendWorkers();
});

describe.each(Object.entries(request))('%s', (_, { why, there }) => {
  it('is told when no worker starts, and made on another try', async () => {
    failWorkers('script');
    follow = effect(() => {
      why?.();
      there();
    });
    await expect.poll(() => threadFailure.value).toBe(NO_WORKER);
    // An answer that waits for another is asked anew when that has failed.
    if (why) await expect.poll(() => String(why())).toContain(NO_WORKER);
    expect(there()).toBe(false);
    mendWorkers();
    retryAll();
    await expect.poll(there, { timeout: 60_000 }).toBe(true);
    // What it waits for, a table, may come after it.
    await expect.poll(() => threadFailure.value, { timeout: 60_000 }).toBeNull();
  });
});

it('a page that may make no worker at all is told the same, and goes on when it may', async () => {
  vi.resetModules();
  const fresh = await import('../../../renderer/answers/index.ts');
  const state = await import('../../../renderer/state/index.ts');
  failWorkers('made');
  state.load(project.value);
  follow = effect(() => void fresh.grooves.value);
  await expect.poll(() => fresh.threadFailure.value).toBe(NO_WORKER);
  mendWorkers();
  fresh.retryAll();
  await expect.poll(() => fresh.grooves.value.answers.size).toBe(2);
});

it('who no longer reads an answer without a thread is not told of it', async () => {
  failWorkers('script');
  follow = effect(() => void largeBend.value);
  await expect.poll(() => threadFailure.value).toBe(NO_WORKER);
  follow();
  expect(threadFailure.value).toBeNull();
});
