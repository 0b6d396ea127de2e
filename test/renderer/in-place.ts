import { type JobName, jobs } from '../../renderer/answers/jobs/jobs.ts';
import { Queue } from '../../renderer/answers/queue.ts';

/** A queue whose jobs are done where they are asked, for tests that have no threads. */
const queue = new Queue(() => ({
  broken: false,
  run: async (name, input, progress) =>
    structuredClone(
      (jobs[name as JobName] as (input: unknown, progress: unknown) => unknown)(
        structuredClone(input),
        progress,
      ),
    ),
  end() {},
}));

export const queueOf = (): Queue => queue;
