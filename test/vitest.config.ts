import { defineConfig } from 'vitest/config';

/** What keeps nothing from one call to the next leaves nothing behind that another file's tests could see. */
const STATELESS = ['core', 'reference', 'main/calc', 'renderer/kit', 'renderer/scene'].map(
  room => `test/${room}/**`,
);

const shared = {
  testTimeout: 60_000,
  // The shell's tests start a browser, which takes its time on a busy machine.
  hookTimeout: 90_000,
  pool: 'threads' as const,
};

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    maxWorkers: 2,
    tags: [
      {
        name: 'slow',
        description: 'solves hundreds of grooves or starts a browser; a quick run leaves it out',
      },
    ],
    projects: [
      {
        test: {
          ...shared,
          name: 'stateless',
          include: STATELESS.map(folder => `${folder}/*.test.ts`),
          benchmark: { include: STATELESS.map(folder => `${folder}/*.bench.ts`) },
          // Loading the modules anew for every file would take longer than the tests.
          isolate: false,
        },
      },
      {
        test: {
          ...shared,
          name: 'program',
          include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
          exclude: [...STATELESS, 'test/e2e/**', 'node_modules/**'],
          benchmark: { include: ['test/**/*.bench.ts'], exclude: [...STATELESS, 'node_modules/**'] },
        },
      },
    ],
  },
});
