import { defineConfig } from 'vitest/config';
import { totals } from './config/totals-reporter.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    environment: 'node',
    testTimeout: 30_000,
    reporters: ['default', totals],
  },
});
