import { defineConfig } from 'vitest/config';
import { BrowserFirst } from './config/browser-first.ts';
import { totals } from './config/totals-reporter.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    environment: 'node',
    testTimeout: 30_000,
    // A page that draws its map in software answers late under load.
    expect: { poll: { timeout: 20_000 } },
    // Two at once also on two cores; tests leave no state in modules, so a worker loads each of them once.
    maxWorkers: 2,
    // Node's own modules: behind Vite's module runner computing takes half as long again (docs/performance.md).
    experimental: { viteModuleRunner: false, nodeLoader: false },
    execArgv: [
      '--import',
      new URL('config/typescript-node.mjs', import.meta.url).href,
      // A search for layouts makes tens of megabytes of short-lived objects: with room for them a tenth of the time goes.
      '--min-semi-space-size=32',
      '--max-semi-space-size=128',
    ],
    isolate: false,
    sequence: { sequencer: BrowserFirst },
    reporters: ['default', totals],
  },
});
