// All tests: the demo district first when it is missing, the app when it is older than its sources, then vitest. Arguments go on to vitest.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { builtApp } from './build-app.mjs';
import { root } from './bundle.mjs';

const node = (args) => spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' }).status ?? 1;

const demo = node([join(root, 'config/demo.mjs')]);
const asked = process.argv.slice(2);
// Once, before workers ask for it at the same time; a part of the tests builds it when it needs it.
const built = asked.length > 0 || builtApp() !== null;
process.exitCode = demo || (built ? node([join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...asked]) : 1);
