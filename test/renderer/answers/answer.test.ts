import { effect, signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { answer, threadFailure } from '../../../renderer/answers/answer.ts';
import { HOW_RUN } from '../../../renderer/answers/jobs/how-run.ts';
import type { JobName } from '../../../renderer/answers/jobs/jobs.ts';
import { tasks } from '../../../renderer/state/index.ts';

interface Begun {
  readonly name: string;
  readonly input: unknown;
  finish(value: unknown): void;
  break(error: Error): void;
  progress(share: number): void;
  ended: boolean;
}

/** Jobs begun, in order; they finish when the test says so. */
const begun: Begun[] = vi.hoisted(() => []);

vi.mock('../../../renderer/answers/threads.ts', async () => {
  const { Queue } = await import('../../../renderer/answers/queue.ts');
  const { HOW_RUN: how } = await import('../../../renderer/answers/jobs/how-run.ts');
  const start = () => {
    const own: Begun[] = [];
    return {
      run: (name: string, input: unknown, progress: (share: number) => void) =>
        new Promise<unknown>((finish, breaks) => {
          const job = { name, input, finish, break: breaks, progress, ended: false };
          own.push(job);
          begun.push(job);
        }),
      end() {
        for (const job of own) job.ended = true;
      },
    };
  };
  const queues = { long: new Queue(start), brief: new Queue(start), hill: new Queue(start) };
  return { queueOf: (name: JobName) => queues[how[name].thread] };
});

const settled = () => new Promise(resolve => setTimeout(resolve));

beforeEach(() => {
  begun.length = 0;
});

/** A question that can be changed, its answer, and how often a reader was told. */
function asking<N extends JobName>(name: N, first: object | null, settleMs = 0) {
  const question = signal<object | null>(first);
  const request = answer<N, object>(name, {
    label: 'Working',
    question: () => question.value,
    input: input => input as never,
    settleMs,
  });
  let reported = 0;
  const read = () =>
    effect(() => {
      void request.value;
      reported += 1;
    });
  return { question, request, read, reported: () => reported };
}

describe('an answer', () => {
  it('is asked for only while it is read, and told with the question it answers', async () => {
    const question = { id: 'a' };
    const { request, read } = asking('equilibria', question);
    await settled();
    expect(begun).toHaveLength(0);
    expect(request.value).toMatchObject({ value: null, running: false, error: null });
    const stop = read();
    await settled();
    expect(request.value).toMatchObject({ value: null, running: true });
    begun[0]!.finish('A');
    await settled();
    expect(request.value).toMatchObject({ value: 'A', of: question, running: false });
    stop();
    // Read again, the same question is not asked again.
    const again = read();
    await settled();
    expect(begun).toHaveLength(1);
    again();
  });

  it('brief: comes all along a drag, and the newest question waits', async () => {
    expect(HOW_RUN.equilibria.ends).toBe(false);
    const { request, question, read } = asking('equilibria', { at: 1 });
    const stop = read();
    await settled();
    question.value = { at: 2 };
    question.value = { at: 3 };
    begun[0]!.finish('one');
    await settled();
    expect(request.value.value).toBe('one');
    expect(begun.map(job => job.input)).toEqual([{ at: 1 }, { at: 3 }]);
    begun[1]!.finish('three');
    await settled();
    expect(request.value).toMatchObject({ value: 'three', of: { at: 3 } });
    stop();
  });

  it('long: a newer question ends the one that runs', async () => {
    expect(HOW_RUN.quickestRuns.ends).toBe(true);
    const { request, question, read } = asking('quickestRuns', { at: 1 });
    const stop = read();
    await settled();
    question.value = { at: 2 };
    expect(begun[0]!.ended).toBe(true);
    await settled();
    begun[0]!.finish('too late');
    begun[1]!.finish('two');
    await settled();
    expect(request.value.value).toBe('two');
    stop();
  });

  it('is dropped when nobody reads it any more, and asked for again by the next who does', async () => {
    const { request, read } = asking('quickestRuns', { at: 21 });
    read()();
    await settled();
    expect(begun).toHaveLength(0);
    const stop = read();
    await settled();
    stop();
    expect(begun[0]!.ended).toBe(true);
    const again = read();
    await settled();
    // That it was let go is nobody's stop button.
    expect(request.value).toMatchObject({ stopped: false, error: null });
    expect(begun).toHaveLength(2);
    begun[1]!.finish('there');
    await settled();
    expect(request.value.value).toBe('there');
    again();
  });

  it('waits for a question to stand still', async () => {
    vi.useFakeTimers();
    const { question, read } = asking('quickestRuns', { at: 31 }, 250);
    const stop = read();
    await vi.advanceTimersByTimeAsync(200);
    question.value = { at: 32 };
    await vi.advanceTimersByTimeAsync(200);
    expect(begun).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(60);
    expect(begun.map(job => job.input)).toEqual([{ at: 32 }]);
    stop();
    vi.useRealTimers();
  });

  it('is kept by the text of its question', async () => {
    const { request, question, read } = asking('modes', { skis: ['kept'] });
    const stop = read();
    await settled();
    begun[0]!.finish(['modes of it']);
    await settled();
    question.value = { skis: ['another'] };
    await settled();
    begun[1]!.finish(['modes of another']);
    await settled();
    question.value = { skis: ['kept'] };
    expect(request.value.value).toEqual(['modes of it']);
    expect(begun).toHaveLength(2);
    stop();
  });

  it('tells its progress to who reads that, and to nobody else', async () => {
    const { request, read, reported } = asking('radiusTable', { at: 1 });
    const stop = read();
    await settled();
    const before = reported();
    const shares: (number | null)[] = [];
    const stopProgress = effect(() => {
      shares.push(request.value.progress);
    });
    begun[0]!.progress(0.25);
    begun[0]!.progress(0.5);
    expect(shares).toEqual([null, 0.25, 0.5]);
    expect(reported()).toBe(before);
    begun[0]!.finish('table');
    await settled();
    expect(request.value).toMatchObject({ value: 'table', progress: null });
    stop();
    stopProgress();
  });

  it('shows in the foot after a moment; stopped there it says so, and is asked again on request', async () => {
    vi.useFakeTimers();
    const { request, question, read } = asking('skiRuns', { at: 1 });
    const stop = read();
    await vi.advanceTimersByTimeAsync(1);
    begun[0]!.finish('one');
    await vi.advanceTimersByTimeAsync(1);
    question.value = { at: 2 };
    await vi.advanceTimersByTimeAsync(300);
    expect(request.value).toMatchObject({ value: 'one', running: true });
    expect(tasks.value.map(task => task.label)).toEqual(['Working']);
    tasks.value[0]!.cancel();
    await vi.advanceTimersByTimeAsync(1);
    expect(request.value).toMatchObject({ value: 'one', of: { at: 1 }, running: false, stopped: true });
    expect(tasks.value).toEqual([]);
    request.retry();
    await vi.advanceTimersByTimeAsync(1);
    begun[2]!.finish('two');
    await vi.advanceTimersByTimeAsync(1);
    expect(request.value).toMatchObject({ value: 'two', stopped: false });
    stop();
    vi.useRealTimers();
  });

  it('says what its job found wrong, which is no fault of the thread', async () => {
    const { request, question, read } = asking('equilibria', { at: 'bad' });
    const stop = read();
    await settled();
    begun[0]!.break(new Error('load: 0 N found; more than 0 is accepted'));
    await settled();
    expect(request.value).toMatchObject({ value: null, error: 'load: 0 N found; more than 0 is accepted' });
    expect(threadFailure.value).toBeNull();
    question.value = null;
    expect(request.value).toMatchObject({ value: null, error: null, running: false });
    stop();
  });
});
