import { expose } from 'comlink';
import { type JobName, jobs, type Progress } from './jobs.ts';

const server = {
  /** Runs one job. The client keeps to one at a time. */
  run(name: JobName, input: unknown, progress: Progress): unknown {
    return (jobs[name] as (input: unknown, progress: Progress) => unknown)(input, progress);
  },
};

export type WorkServer = typeof server;

expose(server);
