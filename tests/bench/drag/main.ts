// The built app under a hand: a dragged site, a dragged spot, and a list of 5,000 sites.
// node config/run.mjs tests/bench/drag/main.ts [--drag-only]
import { cpus, loadavg } from 'node:os';
import { startApp } from '../../browser/app.ts';
import { chromiumArguments, chromiumPath, launchChromium } from '../../browser/chromium.ts';
import { measureDrag } from './drag.ts';
import { measureList } from './list.ts';

if (!chromiumPath()) {
  console.log('No Chromium (CHROMIUM_PATH, or chromium on the PATH): nothing measured.');
  process.exit(0);
}
const app = await startApp();
const browser = await launchChromium(chromiumArguments);
try {
  console.log(
    `${cpus()[0]?.model}, ${cpus().length} cores, node ${process.version}, software renderer, load ${loadavg()[0]!.toFixed(1)}`,
  );
  await measureDrag(browser, app.url);
  if (!process.argv.includes('--drag-only')) await measureList(browser, app.url);
  console.log(`load at the end: ${loadavg()[0]!.toFixed(1)}`);
} finally {
  await browser.close();
  await app.stop();
}
