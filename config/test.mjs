// All tests: the demo district where it is missing, the app where it is older than its sources, then vitest. Arguments go on to it.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './bundle.mjs';
import { prepared } from './prepare.mjs';

const asked = process.argv.slice(2);
const vitest = [join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...asked];
// The app once, before workers ask for it at the same time; a part of the tests builds it when it needs it.
const ready = await prepared({ app: asked.length === 0 });
process.exitCode = ready ? (spawnSync(process.execPath, vitest, { cwd: root, stdio: 'inherit' }).status ?? 1) : 1;
