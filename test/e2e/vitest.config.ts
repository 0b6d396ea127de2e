import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['test/e2e/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 90_000,
    // A busy machine draws late; what never comes fails all the same.
    expect: { poll: { timeout: 15_000 } },
    // Each file drives a browser; two at once would only wait for each other.
    fileParallelism: false,
  },
});
