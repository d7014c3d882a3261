/**
 * How every suite runs: `npm test`. Journeys in a real browser get long limits, because software
 * rendering on a small machine is slow; nothing here asserts on time.
 */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    globalSetup: ['tests/cli/build.ts'],
    environment: 'node',
    // Journeys wait more than they work: on a machine of two cores two files run side by side.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    testTimeout: 60_000,
    hookTimeout: 180_000,
    // Waits for what is bound to come; on a busy machine a worker takes its time to answer.
    expect: { poll: { timeout: 20_000 } },
    // A suite that matches no file, or a test left focused, must not pass for a green run.
    passWithNoTests: false,
    allowOnly: false,
  },
});
