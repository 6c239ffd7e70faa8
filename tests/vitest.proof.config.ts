import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/proof/**/*.test.ts'],
    // A minute or two on a quiet machine; a busy one starts processes ten times slower.
    testTimeout: 900_000,
    hookTimeout: 60_000,
    fileParallelism: false,
    env: { TZ: process.env.TZ ?? 'UTC' },
  },
});
