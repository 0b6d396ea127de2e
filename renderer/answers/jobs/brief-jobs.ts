import type { JobName } from './jobs.ts';

/** Jobs that answer within a drag: they have a thread of their own, and the running one always finishes. */
export const BRIEF_JOBS: ReadonlySet<JobName> = new Set<JobName>([
  'equilibria',
  'rankChosen',
  'modes',
  'tableCurves',
  'largeBend',
  'identify',
  'skiRuns',
]);

/** Jobs with a thread of their own: a long run must not keep short answers waiting, nor lose what it begins from. */
export const HILL_JOBS: ReadonlySet<JobName> = new Set<JobName>(['skiRuns']);
