// The demo district and the built app side by side, each where it is missing or older than what it is made from.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { builtApp } from './build-app.mjs';
import { root } from './bundle.mjs';

/**
 * True once the demo is there, and the app with it unless `app` is false; false where one could not be made, which the lines on
 * standard error say.
 */
export async function prepared({ app = true } = {}) {
  const demo = spawn(process.execPath, [join(root, 'config/demo.mjs')], { cwd: root, stdio: 'inherit' });
  const ended = once(demo, 'exit');
  const built = !app || builtApp() !== null;
  const [status] = await ended;
  if (status !== 0) console.error('The demo district could not be made; see the lines above.');
  return built && status === 0;
}
