// The tests that repeat, each with every count in full. Arguments go on to vitest.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './bundle.mjs';

const suites = ['tests/browser/store-killed.test.ts', 'tests/spots/twin', 'tests/spots/layouts/geometry.test.ts'];
const { status } = spawnSync(process.execPath, [join(root, 'config/test.mjs'), ...suites, ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, BRINKBOOK_LONG: '1' },
});
process.exitCode = status ?? 1;
