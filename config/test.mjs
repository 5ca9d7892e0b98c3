// All tests: the demo district first when it is missing, then vitest. Arguments go on to vitest.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './bundle.mjs';

const node = (args) => spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' }).status ?? 1;

const demo = node([join(root, 'config/demo.mjs')]);
process.exitCode = demo || node([join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...process.argv.slice(2)]);
