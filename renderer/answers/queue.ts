/** A request was replaced by a newer one of its lane, or stopped by the person. Not an error to show. */
export class Superseded extends Error {
  override name = 'Superseded';
}

/** A thread could not be started, or broke off; the next request gets a new one. */
export class ThreadFailed extends Error {
  override name = 'ThreadFailed';
}

/** One thread that runs one job at a time and can be stopped only by ending it. */
export interface Thread {
  run(name: string, input: unknown, progress: (share: number, soFar?: unknown) => void): Promise<unknown>;
  /** It broke off, perhaps while nobody waited. */
  readonly broken?: boolean;
  end(): void;
}

export interface Request {
  /** A newer request of the same lane replaces an older one: latest wins. */
  readonly lane: string;
  /** Whether it ends the lane's running request too, as it does unless told otherwise; else only one that waits. */
  readonly ends?: boolean;
  readonly name: string;
  readonly input: unknown;
  /** With what is known already, where the job tells it. */
  progress(share: number | null, soFar?: unknown): void;
}

interface Waiting extends Request {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

/**
 * Jobs one after another on one thread. Computing cannot listen for a stop, so stopping ends the thread
 * and the next job gets a new one; requests of other lanes keep their place.
 */
export class Queue {
  private thread: Thread | null = null;
  private running: Waiting | null = null;
  private waiting: Waiting[] = [];

  constructor(private readonly start: () => Thread) {}

  ask(request: Request): Promise<unknown> {
    if (request.ends === false) this.forget(request.lane);
    else this.stop(request.lane);
    return new Promise((resolve, reject) => {
      this.waiting.push({ ...request, resolve, reject });
      this.next();
    });
  }

  /** Drops a lane's request if it still waits; whether one did. */
  forget(lane: string): boolean {
    const dropped = this.waiting.filter(each => each.lane === lane);
    this.waiting = this.waiting.filter(each => each.lane !== lane);
    for (const each of dropped) each.reject(new Superseded(`${each.name} was replaced or stopped`));
    return dropped.length > 0;
  }

  /** Drops a lane's request, running or waiting. */
  stop(lane: string): void {
    const dropped = this.waiting.filter(each => each.lane === lane);
    this.waiting = this.waiting.filter(each => each.lane !== lane);
    if (this.running?.lane === lane) {
      dropped.push(this.running);
      this.running = null;
      this.thread?.end();
      this.thread = null;
    }
    for (const each of dropped) each.reject(new Superseded(`${each.name} was replaced or stopped`));
    this.next();
  }

  private next(): void {
    if (this.running) return;
    const job = this.waiting.shift();
    if (!job) return;
    this.running = job;
    const current = () => this.running === job;
    const finish = (settle: () => void) => {
      // An answer of a thread that was ended in the meantime belongs to nobody.
      if (!current()) return;
      this.running = null;
      settle();
      this.next();
    };
    job.progress(null);
    this.run(job, (share, soFar) => {
      if (current()) job.progress(share, soFar);
    }).then(
      value => finish(() => job.resolve(value)),
      (error: Error) => {
        if (error instanceof ThreadFailed && current()) {
          this.thread?.end();
          this.thread = null;
        }
        finish(() => job.reject(error));
      },
    );
  }

  /** Async, so that a thread that cannot even be made rejects like one that breaks off. */
  private async run(job: Request, progress: (share: number, soFar?: unknown) => void): Promise<unknown> {
    if (this.thread?.broken) {
      this.thread.end();
      this.thread = null;
    }
    this.thread ??= this.start();
    return this.thread.run(job.name, job.input, progress);
  }
}
