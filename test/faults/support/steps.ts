import { Session } from 'node:inspector/promises';

const OURS = /\/(core|main|renderer)\//;

/**
 * Counts steps of the project's own code: how often each of its blocks ran, as the engine counts them. Unlike a time
 * this is the same on every machine.
 */
export async function startCounting() {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  const take = async (): Promise<number> => {
    // Taking the counts sets them to nothing.
    const { result } = await session.post('Profiler.takePreciseCoverage');
    const ours = result.filter(({ url }) => OURS.test(url) && !url.includes('node_modules'));
    const ranges = ours.flatMap(({ functions }) => functions.flatMap(each => each.ranges));
    return ranges.reduce((sum, { count }) => sum + count, 0);
  };
  await take();
  return {
    /** What has run since the last count belongs to this one. */
    async stepsOf(call: () => unknown): Promise<number> {
      call();
      return take();
    },
    stop: () => session.disconnect(),
  };
}
