import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { demoEntries } from '../../../renderer/rack/index.ts';
import {
  changeConditions,
  conditions,
  type DraftKeeper,
  EMPTY_PROJECT,
  keepDraft,
  load,
  project,
} from '../../../renderer/state/index.ts';

type Changes = Readonly<Record<string, string | null>>;

let writes: Changes[];
let left: Changes[];
let trouble: (string | null)[];
let full: boolean;
let slow: Promise<void> | null;
let keeper: DraftKeeper;

const store = {
  async write(changes: Changes) {
    if (slow) await slow;
    if (full) throw new Error('The browser has no room left.');
    writes.push(changes);
  },
  leave(changes: Changes) {
    left.push(changes);
  },
};

const page = new EventTarget();
vi.stubGlobal('addEventListener', page.addEventListener.bind(page));
vi.stubGlobal('removeEventListener', page.removeEventListener.bind(page));

beforeEach(() => {
  vi.useFakeTimers();
  writes = [];
  left = [];
  trouble = [];
  full = false;
  slow = null;
  load({ ...EMPTY_PROJECT, rack: demoEntries() });
  keeper = keepDraft(store, project.value, [], why => trouble.push(why));
});

afterEach(async () => {
  full = false;
  await keeper.stop();
  vi.useRealTimers();
});

test('edits that never pause are written all the same, each within a second', async () => {
  for (let at = 1; at <= 50; at++) {
    changeConditions('Speed', { speedKmh: at }, 'speed');
    await vi.advanceTimersByTimeAsync(100);
    const last = writes.at(-1)?.rest;
    const speed = last ? (JSON.parse(last) as { conditions: { speedKmh: number } }).conditions.speedKmh : 0;
    expect(conditions.value.speedKmh - speed).toBeLessThan(10);
  }
  expect(writes.length).toBeGreaterThan(5);
});

test('nothing changed, nothing written', async () => {
  await vi.advanceTimersByTimeAsync(10_000);
  await keeper.flush();
  expect(writes).toEqual([]);
});

test('what was edited while a write was under way follows it', async () => {
  let letGo = () => {};
  slow = new Promise(resolve => {
    letGo = resolve;
  });
  changeConditions('Speed', { speedKmh: 31 });
  await vi.advanceTimersByTimeAsync(400);
  changeConditions('Speed', { speedKmh: 32 });
  const flushed = keeper.flush();
  letGo();
  slow = null;
  await flushed;
  expect(writes).toHaveLength(2);
  expect(writes[1]!.rest).toContain('"speedKmh":32');
});

test('a write that fails is told once and tried again, and the message goes when there is room', async () => {
  full = true;
  changeConditions('Speed', { speedKmh: 31 });
  await vi.advanceTimersByTimeAsync(7000);
  changeConditions('Speed', { speedKmh: 32 });
  await vi.advanceTimersByTimeAsync(7000);
  expect(trouble).toEqual(['The browser has no room left.']);
  full = false;
  await vi.advanceTimersByTimeAsync(3000);
  expect(trouble).toEqual(['The browser has no room left.', null]);
  expect(writes).toHaveLength(1);
  expect(writes[0]!.rest).toContain('"speedKmh":32');
});

test('a page that is left hands over all that is not down, a write under way included', async () => {
  let letGo = () => {};
  slow = new Promise(resolve => {
    letGo = resolve;
  });
  changeConditions('Speed', { speedKmh: 31 });
  await vi.advanceTimersByTimeAsync(400);
  changeConditions('Slope', { slopeDeg: 9 });
  page.dispatchEvent(new Event('pagehide'));
  expect(left).toHaveLength(1);
  expect(left[0]!.rest).toMatch(/"slopeDeg":9.*"speedKmh":31/);
  slow = null;
  letGo();
});
