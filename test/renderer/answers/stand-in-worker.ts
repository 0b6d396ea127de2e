import { type Endpoint, expose } from 'comlink';
import { type JobName, jobs, type Progress } from '../../../renderer/answers/jobs/jobs.ts';

let fail: 'script' | 'made' | null = null;
const running = new Set<StandInWorker>();

/** From now on no worker starts, by its script or already when it is made; those that run break off. */
export function failWorkers(how: 'script' | 'made'): void {
  fail = how;
  for (const worker of running) worker.dispatchEvent(new Event('error'));
}

export function mendWorkers(): void {
  fail = null;
}

/** A worker that runs the program's own jobs on the thread of the test. */
class StandInWorker extends EventTarget {
  readonly #channel = new MessageChannel();

  constructor() {
    super();
    if (fail === 'made') throw new DOMException('not allowed here', 'SecurityError');
    if (fail === 'script') {
      setTimeout(() => this.dispatchEvent(new Event('error')));
      return;
    }
    running.add(this);
    const run = (name: JobName, input: unknown, progress: Progress) =>
      (jobs[name] as (input: unknown, progress: Progress) => unknown)(input, progress);
    expose({ run }, this.#channel.port2 as unknown as Endpoint);
    this.#channel.port1.addEventListener('message', ({ data }) =>
      this.dispatchEvent(new MessageEvent('message', { data })),
    );
    this.#channel.port1.start();
  }

  postMessage(message: unknown, transfer: Transferable[] = []): void {
    this.#channel.port1.postMessage(message, transfer);
  }

  terminate(): void {
    running.delete(this);
    this.#channel.port1.close();
    this.#channel.port2.close();
  }
}

Object.assign(globalThis, { Worker: StandInWorker });
