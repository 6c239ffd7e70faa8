import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'tests/proof/**', 'node_modules/**'],
    testTimeout: 20_000,
    // Files of one worker share loaded modules: half the time. A test that changes something global puts it back.
    isolate: false,
    // Host zone must never matter; CI also runs the time tests under other zones.
    env: { TZ: process.env.TZ ?? 'UTC' },
  },
});
