import { describe, expect, it } from 'vitest';
import { Queue, Superseded, type Thread, ThreadFailed } from '../../../renderer/answers/queue.ts';

/** Threads whose jobs finish when the test says so. */
function threads() {
  const started: { name: string; finish(value: unknown): void; ended: boolean }[] = [];
  let count = 0;
  const start = (): Thread => {
    count += 1;
    const own: typeof started = [];
    return {
      run: name =>
        new Promise(resolve => {
          const job = { name, finish: resolve, ended: false };
          own.push(job);
          started.push(job);
        }),
      end() {
        for (const job of own) job.ended = true;
      },
    };
  };
  return { started, start, count: () => count };
}

const request = (lane: string, name: string) => ({ lane, name, input: null, progress: () => {} });

describe('queue', () => {
  it('runs one job after another on one thread', async () => {
    const { started, start, count } = threads();
    const queue = new Queue(start);
    const first = queue.ask(request('a', 'one'));
    const second = queue.ask(request('b', 'two'));
    expect(started.map(job => job.name)).toEqual(['one']);
    started[0]!.finish(1);
    expect(await first).toBe(1);
    started[1]!.finish(2);
    expect(await second).toBe(2);
    expect(count()).toBe(1);
  });

  it('lets the latest of a lane win and ends the thread of the older', async () => {
    const { started, start, count } = threads();
    const queue = new Queue(start);
    const older = queue.ask(request('a', 'old'));
    const newer = queue.ask(request('a', 'new'));
    await expect(older).rejects.toBeInstanceOf(Superseded);
    expect(started[0]!.ended).toBe(true);
    started[0]!.finish('too late');
    started[1]!.finish('right');
    expect(await newer).toBe('right');
    expect(count()).toBe(2);
  });

  it('replaces a waiting request without touching the running one', async () => {
    const { started, start } = threads();
    const queue = new Queue(start);
    const running = queue.ask(request('a', 'run'));
    const waiting = queue.ask(request('b', 'older'));
    const latest = queue.ask(request('b', 'newer'));
    await expect(waiting).rejects.toBeInstanceOf(Superseded);
    expect(started[0]!.ended).toBe(false);
    started[0]!.finish('done');
    expect(await running).toBe('done');
    expect(started[1]!.name).toBe('newer');
    started[1]!.finish('also');
    expect(await latest).toBe('also');
  });

  it('lets brief work finish and keeps only the newest waiting', async () => {
    const { started, start, count } = threads();
    const queue = new Queue(start);
    const brief = (name: string) => ({ ...request('drag', name), ends: false });
    const first = queue.ask(brief('first'));
    const second = queue.ask(brief('second'));
    const third = queue.ask(brief('third'));
    await expect(second).rejects.toBeInstanceOf(Superseded);
    started[0]!.finish(1);
    expect(await first).toBe(1);
    expect(started.map(job => job.name)).toEqual(['first', 'third']);
    started[1]!.finish(3);
    expect(await third).toBe(3);
    expect(count()).toBe(1);
  });

  it('forgets what still waits and leaves what runs', async () => {
    const { started, start } = threads();
    const queue = new Queue(start);
    const running = queue.ask(request('a', 'run'));
    const waiting = queue.ask(request('b', 'wait'));
    expect(queue.forget('a')).toBe(false);
    expect(queue.forget('b')).toBe(true);
    await expect(waiting).rejects.toBeInstanceOf(Superseded);
    started[0]!.finish('done');
    expect(await running).toBe('done');
    expect(started).toHaveLength(1);
  });

  it('goes on after a job that fails', async () => {
    let fail = true;
    const queue = new Queue(() => ({
      run: async () => {
        if (!fail) return 'fine';
        fail = false;
        throw new Error('load: 0 N found; more than 0 is accepted');
      },
      end() {},
    }));
    await expect(queue.ask(request('a', 'bad'))).rejects.toThrow('load: 0 N found');
    expect(await queue.ask(request('a', 'good'))).toBe('fine');
  });
});

describe('a thread that breaks off', () => {
  it('is let go, and the next request gets a new one', async () => {
    let count = 0;
    let ended = 0;
    const queue = new Queue(() => {
      count += 1;
      const broken = count === 1;
      return {
        run: () => (broken ? Promise.reject(new ThreadFailed('no worker')) : Promise.resolve('well')),
        end() {
          ended += 1;
        },
      };
    });
    await expect(queue.ask(request('a', 'one'))).rejects.toThrow('no worker');
    expect(ended).toBe(1);
    expect(await queue.ask(request('a', 'two'))).toBe('well');
    expect(count).toBe(2);
  });

  it('while nobody waited is not what the next request is given', async () => {
    const made: { broken: boolean }[] = [];
    const queue = new Queue(() => {
      const thread = { broken: false, run: async () => made.length, end() {} };
      made.push(thread);
      return thread;
    });
    expect(await queue.ask(request('a', 'one'))).toBe(1);
    made[0]!.broken = true;
    expect(await queue.ask(request('a', 'two'))).toBe(2);
  });

  it('is let go where it cannot even be made, and what waits behind it is asked all the same', async () => {
    let broken = true;
    const queue = new Queue(() => {
      if (broken) throw new ThreadFailed('no worker');
      return { run: async name => name, end() {} };
    });
    const first = queue.ask(request('a', 'one'));
    const second = queue.ask(request('b', 'two'));
    await expect(first).rejects.toThrow('no worker');
    await expect(second).rejects.toThrow('no worker');
    broken = false;
    expect(await queue.ask(request('a', 'three'))).toBe('three');
  });
});
