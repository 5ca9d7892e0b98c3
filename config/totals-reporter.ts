import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line of totals; a file that fails to load counts as one failure. */
export const totals: Reporter = {
  onTestRunEnd(modules: readonly TestModule[]) {
    let passed = 0;
    let failed = 0;
    let skipped = 0;
    for (const module of modules) {
      const tests = [...module.children.allTests()];
      if (module.state() === 'failed' && tests.length === 0) failed++;
      for (const test of tests) {
        const state = test.result().state;
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
        else skipped++;
      }
    }
    process.stdout.write(`\n${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}\n`);
  },
};
