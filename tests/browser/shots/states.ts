import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { leaves } from '../../../src/ui/book/leaves.ts';
import { root } from '../app.ts';
import { pointAt, sentenceLike } from '../page.ts';

/** A screen in a state worth looking at. */
export interface Shot {
  readonly name: string;
  /** Path and hash of its address. */
  readonly path: string;
  /** What brings it into its state, once the sentence stands and the map has drawn. */
  act?(page: Page): Promise<void>;
  /** It leaves something behind: in a browser of its own. */
  readonly alone?: true;
}

const study = (site: string, name = site, act?: Shot['act']): Shot => ({
  name: `study-${name}`,
  path: `#/study/${site}`,
  ...(act && { act }),
});

/** Draws the demo district on 10 m elevation: nothing but a screening can come of it. */
async function screening(page: Page): Promise<void> {
  await page.setInputFiles('input[name=elevation]', join(root, 'data/demo/elevation-10m.tif'));
  await page.setInputFiles('input[name=roads]', join(root, 'data/demo/roads.geojson'));
  await page.locator('input[name=keep]').setChecked(false);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForFunction(() => document.querySelector('.head')?.textContent?.includes('elevation-10m.tif'));
  await page.evaluate(() => {
    location.hash = '#/study/-128.0157212,43.9998178,right';
  });
  await page.locator('[data-testid=profile]').waitFor({ timeout: 30_000 });
}

const drawer =
  (taps: number) =>
  async (page: Page): Promise<void> => {
    const handle = page.locator('.drawer-handle');
    if (!(await handle.isVisible())) return;
    for (let i = 0; i < taps; i++) await handle.click();
    await page.waitForTimeout(250);
  };

/** A tool in hand and two taps on the map, in part of the map that is free on a phone too. */
const twoTaps =
  (tool: string) =>
  async (page: Page): Promise<void> => {
    const { x, y } = await pointAt(page);
    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press(tool);
    await page.mouse.click(x - 60, y - 10);
    await page.mouse.click(x + 40, y + 60);
    await page.waitForTimeout(800);
  };

const stepNames = ['edge', 'angle', 'barrier', 'ground', 'anchors', 'radio', 'up', 'sign'];

export const shots: readonly Shot[] = [
  { name: 'survey', path: '#/survey' },
  { name: 'survey-list', path: '#/survey', act: drawer(2) },
  { name: 'survey-site', path: '#/survey/kettle-bend' },
  { name: 'survey-site-full', path: '#/survey/kettle-bend', act: drawer(2) },
  { name: 'survey-point', path: '#/survey/-128.0157212,43.9998178,right' },
  { name: 'survey-relief', path: '#/survey/kettle-bend', act: (page) => page.getByLabel('3D relief').click() },
  { name: 'survey-measure', path: '#/survey/kettle-bend', act: twoTaps('m'), alone: true },
  { name: 'survey-line', path: '#/survey/kettle-bend', act: twoTaps('b'), alone: true },
  { name: 'survey-tree', path: '#/survey/kettle-bend', act: twoTaps('t'), alone: true },
  { name: 'survey-zone', path: '#/survey/kettle-bend', act: twoTaps('z'), alone: true },
  {
    name: 'survey-stencil',
    path: '#/survey/kettle-bend',
    async act(page) {
      const mark = page.locator('.thumb button', { hasText: 'mark' });
      if (await mark.isVisible()) await mark.click();
    },
    alone: true,
  },
  study('tender-verge', 'steep'),
  study('kettle-bend', 'measured'),
  study('kettle-bend', 'measured-full', drawer(2)),
  study('level-acre', 'low'),
  study('barrier-reach', 'high'),
  study('coin-toss', 'undecided'),
  study('bridge-head', 'bridge'),
  { name: 'study-point', path: '#/study/-128.0157212,43.9998178,right' },
  { name: 'study-screening', path: '#/open', act: screening, alone: true },
  study('tender-verge', 'half', drawer(1)),
  study('tender-verge', 'full', drawer(2)),
  study('kettle-bend', 'plan', (page) => page.getByRole('button', { name: 'plan', exact: true }).click()),
  study('kettle-bend', 'map', (page) => page.getByRole('button', { name: 'map', exact: true }).click()),
  study('tender-verge', 'straight', async (page) => {
    await drawer(2)(page);
    await page.locator('.layout-row', { hasText: 'Straight haul' }).getByRole('radio').check();
    await page.locator('.layout-row').first().scrollIntoViewIfNeeded();
  }),
  study('tender-verge', 'why', async (page) => {
    await drawer(2)(page);
    await page.locator('.layout-row .figure-key', { hasText: 'reset' }).first().click();
  }),
  study('tender-verge', 'reading', async (page) => {
    await drawer(2)(page);
    await page.getByRole('button', { name: 'tap to enter' }).first().click();
  }),
  {
    ...study('tender-verge', 'ice', async (page) => {
      await drawer(2)(page);
      await page.getByLabel('ice').first().click();
      await sentenceLike(page, /ice/);
    }),
    alone: true,
  },
  ...stepNames.map(
    (name, i): Shot => ({
      name: `check-${i + 1}-${name}`,
      path: '#/check/kettle-bend',
      act: (page) => page.locator('.check-steps li').nth(i).getByRole('button').click(),
    }),
  ),
  ...leaves.map(({ name }): Shot => ({ name: `book-${name}`, path: `#/book?${name}` })),
  { name: 'own-files', path: '#/open' },
  { name: 'call', path: 'call/' },
  {
    name: 'call-search',
    path: 'call/#at=43.99952,-128.01562,8',
    act: async (page) => page.locator('.edges li').first().waitFor({ timeout: 60_000 }),
  },
  { name: 'call-site', path: 'call/#site=kettle-bend', act: async (page) => page.locator('.data').first().waitFor() },
  { name: 'call-high', path: 'call/#site=broken-shelf', act: async (page) => page.locator('.plan').first().waitFor() },
];
