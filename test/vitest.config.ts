import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    exclude: ['test/e2e/**', 'node_modules/**'],
    testTimeout: 60_000,
    // The shell's tests start a browser, which takes its time on a busy machine.
    hookTimeout: 90_000,
    pool: 'threads',
    maxWorkers: 2,
  },
});
