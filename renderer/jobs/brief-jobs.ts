import type { JobName } from './jobs.ts';

/** Jobs that answer within a drag: they have a thread of their own, and the running one always finishes. */
export const BRIEF_JOBS: ReadonlySet<JobName> = new Set<JobName>([
  'equilibria',
  'rankChosen',
  'modes',
  'tableCurves',
  'largeBend',
  'identify',
]);
