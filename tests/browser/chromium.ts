import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** The Chromium to test with: CHROMIUM_PATH, else `chromium` on the PATH; null where there is none. */
export function chromiumPath(): string | null {
  if (process.env.CHROMIUM_PATH) return process.env.CHROMIUM_PATH;
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, 'chromium')).find((path) => existsSync(path)) ?? null;
}

/** True where browser tests must be left out; says so, and is an error where everything must be there (CI=true). */
export function withoutChromium(): boolean {
  if (chromiumPath()) return false;
  const words = 'No Chromium (CHROMIUM_PATH, or chromium on the PATH): the browser tests';
  if (process.env.CI === 'true') throw new Error(`${words} cannot run.`);
  console.log(`${words} are left out.`);
  return true;
}

/**
 * Parts of Chromium that are off: the pages behind its own address bar, which cost every window as much as a small app, and what
 * the driver turns off, since of two such lists the last one counts.
 */
const withoutFeatures = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'AimEnabled',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
];

/** A software renderer and no traffic of its own. */
export const chromiumArguments = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
  '--disable-gpu-compositing',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  `--disable-features=${withoutFeatures.join(',')}`,
];

/**
 * For tests the quick compiler alone, in the thread that asks: every page starts a handful of workers, and optimizing their code
 * anew each time takes a quarter of all that a page costs.
 */
export const testArguments = [...chromiumArguments, '--js-flags=--no-turbofan --no-concurrent-recompilation'];

/** A quiet Chromium; benchmarks take `chromiumArguments`, so that code runs there as on a person's machine. */
export const launchChromium = (args: readonly string[] = testArguments): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath()!, args: [...args] });
