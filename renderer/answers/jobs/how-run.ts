import type { JobName } from './jobs.ts';

/** How a job is run. */
export interface HowRun {
  /** Jobs of one thread run one after another: long work keeps neither short answers nor the hill waiting. */
  readonly thread: 'long' | 'brief' | 'hill';
  /**
   * Whether a newer question ends the one that runs. Where it does not, the running one finishes and the newest
   * waits: a drag then gets answers all along its way, and never starts a thread anew.
   */
  readonly ends: boolean;
  /** Answers kept by the text of what was asked. */
  readonly kept: number;
}

const brief = { thread: 'brief', ends: false, kept: 0 } as const;
const long = { thread: 'long', ends: true, kept: 0 } as const;

export const HOW_RUN: Readonly<Record<JobName, HowRun>> = {
  equilibria: brief,
  modes: { ...brief, kept: 8 },
  tableCurves: { ...brief, kept: 8 },
  largeBend: brief,
  identify: brief,
  // What a run begins from stays with its thread.
  skiRuns: { ...brief, thread: 'hill' },
  groove: { ...long, kept: 8 },
  // Begun tables are finished: they are kept, whoever asked.
  radiusTable: { ...long, ends: false },
  quickestRuns: { ...long, kept: 8 },
};
