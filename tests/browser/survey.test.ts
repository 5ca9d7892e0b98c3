import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { appInChromium } from './app-in-chromium.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { pointAt, sentenceLike, smallDesk } from './page.ts';

/** A shared machine may take a while. */
const patient = { timeout: 20_000 };

describe.skipIf(withoutChromium())('the survey', () => {
  const here = appInChromium();
  const visit = onePage(here, smallDesk, { map: 'there' });
  const rows = (page: Page) => page.locator('.site-row');
  const flag = (page: Page, words: RegExp) =>
    page.locator('.map-flag', { hasText: words }).waitFor({ timeout: 20_000 });
  /** Opens a site's survey and gives the middle of its point, once the map shows it. */
  const atKettleBend = async (): Promise<{ page: Page; x: number; y: number }> => {
    const page = await visit('#/survey/kettle-bend');
    await sentenceLike(page, /Plan as/);
    await page.locator('.study-point').waitFor();
    return { page, ...(await pointAt(page)) };
  };

  test('the list is searched, filtered and sorted; arrow keys and Enter pick a site', async () => {
    const page = await visit('#/survey');
    await sentenceLike(page, /20 sites on 3 roads/);
    // Along the road, as somebody drives it.
    const names = () => page.locator('.site-row .row-name').allTextContents();
    await expect
      .poll(async () => (await names()).slice(0, 6), patient)
      .toEqual(['Coin Toss', 'Nailbox Cut', 'Broken Shelf', 'Long Ladle', 'Snagwood', 'Split Oak Turnout']);
    // Stopped before the page was opened, as after a reload; it goes on when asked to.
    await page.getByRole('button', { name: 'read on' }).click();
    await page.waitForSelector('.map-view:is([data-roadside=reading], [data-roadside=read])', { timeout: 20_000 });
    const stop = page.getByRole('button', { name: 'stop', exact: true });
    if (await stop.isVisible()) await stop.click();
    await page.keyboard.press('/');
    await page.keyboard.type('cinder');
    await expect.poll(() => rows(page).count(), patient).toBeLessThan(12);
    expect(await rows(page).allTextContents()).toEqual(
      expect.arrayContaining([expect.stringContaining('Split Oak Turnout')]),
    );
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'not checked', exact: true }).click();
    await page.locator('.sort select').selectOption('name');
    await expect.poll(() => rows(page).first().textContent(), patient).toContain('Barrier Reach');
    await rows(page).first().focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => /#\/survey\/[a-z]/.test(location.hash));
    expect(page.url()).not.toContain('barrier-reach');
  }, 90_000);

  test('an address pasted into the open window moves the map, and back goes back', async () => {
    const { page, ...before } = await atKettleBend();
    const hash = () => page.evaluate(() => location.hash);
    await page.waitForFunction(() => /@/.test(location.hash));
    const was = await hash();
    const [lon, lat] = /@(-?[\d.]+),(-?[\d.]+),/.exec(was)!.slice(1).map(Number) as [number, number];
    const aside = `#/survey/kettle-bend@${(lon + 0.001).toFixed(5)},${lat.toFixed(5)},17.0`;
    await page.evaluate((to) => {
      location.hash = to;
    }, aside);
    // The map's middle went east, so that the point stands farther west; the sentence is the same site's.
    await expect.poll(async () => (await pointAt(page)).x, patient).toBeLessThan(before.x - 50);
    expect(await hash()).toBe(aside);
    await sentenceLike(page, /Plan as/);
    await page.goBack();
    await expect.poll(async () => Math.abs((await pointAt(page)).x - before.x), patient).toBeLessThan(3);
    expect(await hash()).toBe(was);
  }, 90_000);

  test('an edit is one command: undone, done again, and there after a reload', async () => {
    const page = await visit('#/survey/kettle-bend');
    const name = page.getByLabel('Name', { exact: true });
    await name.fill('Kettle Bend, upper');
    await name.press('Enter');
    await page.locator('.kept', { hasText: /^saved$/ }).waitFor();
    await page.getByRole('button', { name: 'undo', exact: true }).click();
    await expect.poll(() => name.inputValue(), patient).toBe('Kettle Bend');
    await page.getByRole('button', { name: 'redo', exact: true }).click();
    await expect.poll(() => name.inputValue(), patient).toBe('Kettle Bend, upper');
    await page.reload();
    await expect.poll(() => name.inputValue(), patient).toBe('Kettle Bend, upper');
    await page.getByRole('button', { name: 'delete', exact: true }).click();
    await sentenceLike(page, /19 sites/);
    await page.keyboard.press('Control+z');
    await sentenceLike(page, /20 sites/);
  }, 90_000);

  test('a tap with the site in hand places one on the edge and says the side in driving words', async () => {
    const { page, x, y } = await atKettleBend();
    await page.keyboard.press('e');
    await page.mouse.click(x + 70, y - 4);
    await flag(page, /side, .*when driving .*edge .* out/);
    await page.waitForFunction(() => /#\/survey\/site-/.test(location.hash));
    await page.getByRole('button', { name: 'all sites' }).click();
    await sentenceLike(page, /21 sites/);
    await page.keyboard.press('Control+z');
    await sentenceLike(page, /20 sites/);
  }, 90_000);

  test('a tree with its trunk, a barrier as a line, soft ground as an area, a patient point', async () => {
    const { page, x, y } = await atKettleBend();
    await page.keyboard.press('t');
    await page.mouse.click(x - 60, y + 40);
    const panel = page.getByRole('region', { name: 'Mark: tree' });
    await panel.getByLabel('Trunk, in').fill('14');
    await panel.getByLabel('Trunk, in').press('Enter');
    await page.keyboard.press('Escape');

    await page.getByRole('button', { name: 'barrier', exact: true }).click();
    await page.mouse.click(x - 60, y + 10);
    await page.mouse.click(x + 60, y + 6);
    await page.getByRole('button', { name: 'done' }).click();
    await page.getByRole('region', { name: 'Mark: barrier' }).waitFor();

    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('s');
    for (const [dx, dy] of [
      [20, 60],
      [60, 60],
      [60, 90],
    ] as const) {
      await page.mouse.click(x + dx, y + dy);
    }
    await page.keyboard.press('Shift+Enter');
    await page.getByRole('region', { name: 'Mark: soft ground' }).waitFor();
    await page.getByRole('region', { name: 'Mark: soft ground' }).getByRole('button', { name: 'close' }).click();

    await page.keyboard.press('x');
    await page.mouse.click(x + 8, y + 50);
    await sentenceLike(page, /patient point|Plan as/);
    await page.getByRole('button', { name: 'no patient point' }).waitFor();
    const marked = await page.locator('.marks-of button').allTextContents();
    // The sign and two of the trees were there before.
    expect(marked.sort()).toEqual(['barrier', 'curve warning', 'soft ground', 'tree', 'tree', 'tree']);
    for (let i = 0; i < 5; i++) await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('.marks-of button').count(), patient).toBe(3);
  }, 120_000);

  /** Middle of an element on the screen, pixels. */
  const middle = async (target: Locator): Promise<{ x: number; y: number }> => {
    const box = (await target.boundingBox())!;
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const drag = async (page: Page, target: Locator, dx: number, dy: number): Promise<void> => {
    const { x, y } = await middle(target);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const share of [0.3, 0.7, 1]) await page.mouse.move(x + dx * share, y + dy * share);
    await page.mouse.up();
  };

  test('a mark in hand is dragged, a line by its corners, by mouse and keys, each one command', async () => {
    const { page, x, y } = await atKettleBend();
    const handles = page.locator('.mark-handle:not(.between)');
    await page.keyboard.press('t');
    await page.mouse.click(x - 60, y + 40);
    const tree = page.getByRole('button', { name: /^tree\. Arrow keys/ });
    await tree.waitFor();
    const before = await middle(tree);
    await drag(page, tree, -30, 24);
    await flag(page, /tree moved/);
    await expect.poll(async () => Math.round((await middle(tree)).x - before.x), patient).toBe(-30);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => Math.round((await middle(tree)).x - before.x), patient).toBe(0);

    await page.keyboard.press('Escape');
    await page.keyboard.press('b');
    await page.mouse.click(x - 80, y + 16);
    await page.mouse.click(x + 80, y + 10);
    await page.keyboard.press('Shift+Enter');
    await expect.poll(() => handles.count(), patient).toBe(2);
    // A side is drawn out to a third corner, which a key moves and another takes away.
    await drag(page, page.locator('.mark-handle.between'), 6, 40);
    await expect.poll(() => handles.count(), patient).toBe(3);
    const corner = page.getByRole('button', { name: /^barrier, corner 2 of 3/ });
    const low = await middle(corner);
    await corner.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowDown');
    expect((await middle(corner)).y).toBeGreaterThan(low.y + 3);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+z');
    await expect.poll(async () => Math.abs((await middle(corner)).y - low.y), patient).toBeLessThan(1);
    await corner.press('Delete');
    await expect.poll(() => handles.count(), patient).toBe(2);
    await handles.first().press('Delete');
    await flag(page, /needs its 2 corners/);
    // A tap elsewhere puts it down and leads nowhere.
    const address = page.url();
    await page.mouse.click(x + 120, y + 120);
    await expect.poll(() => handles.count(), patient).toBe(0);
    expect(page.url()).toBe(address);
  }, 120_000);

  test('a landing zone with its size and hazards is on the map, in the list of the site and in the study', async () => {
    const { page, x, y } = await atKettleBend();
    await page.keyboard.press('z');
    await page.mouse.click(x - 90, y + 60);
    const panel = page.getByRole('region', { name: 'Place: Landing zone' });
    for (const [label, typed] of [
      ['Length, ft', '150'],
      ['Width, ft', '110'],
      ['Hazards: wires, poles, loose ground, slope', 'wires on the east side'],
    ] as const) {
      await panel.getByLabel(label).fill(typed);
      await panel.getByLabel(label).press('Tab');
    }
    await expect
      .poll(() => panel.locator('.zone-size').textContent(), patient)
      .toMatch(/150 × 110.ft, too small by night/);
    await drag(page, page.getByRole('button', { name: /^Landing zone\. Arrow keys/ }), 20, 20);
    await flag(page, /Landing zone moved/);
    await panel.getByRole('button', { name: 'close' }).click();
    await page.mouse.click(x - 70, y + 80);
    await panel.waitFor();
    await page.keyboard.press('2');
    await page
      .getByText(/Landing zone, \d+.ft \S+ in a straight line, 150 × 110.ft.*hazards: wires on the east side/)
      .waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'edit', exact: true }).click();
    await panel.getByRole('button', { name: 'delete', exact: true }).click();
    await expect.poll(() => page.getByText(/Landing zone, \d+.ft/).count(), patient).toBe(0);
  }, 120_000);

  test('the spot tool parks the apparatus that is chosen as what is chosen; the study changes and unpins it by keys', async () => {
    const { page, x, y } = await atKettleBend();
    await page.keyboard.press('v');
    const names = await page.locator('.flag-fields select').first().locator('option').allTextContents();
    expect(names.length).toBeGreaterThan(1);
    await page.locator('.flag-fields select').first().selectOption({ index: 1 });
    await page.locator('.flag-fields select').nth(1).selectOption('belay');
    await page.mouse.click(x + 40, y - 8);
    await flag(page, /Pinned there as belay anchor/);
    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('2');
    const row = page.locator('.pin-row', { hasText: 'Belay anchor' });
    const parked = page.getByLabel('Belay anchor: apparatus parked there');
    await parked.waitFor({ timeout: 20_000 });
    await expect.poll(() => parked.locator('option:checked').textContent(), patient).toBe(names[1]);
    await parked.selectOption({ index: 0 });
    await expect
      .poll(() => row.locator('select').first().locator('option:checked').textContent(), patient)
      .toContain(names[0]);
    const pin = page.getByRole('button', { name: 'Belay anchor pinned' });
    await pin.press('Enter');
    await expect.poll(() => pin.count(), patient).toBe(0);
    await page.keyboard.press('Control+z');
    await pin.waitFor();
    // By keys alone: the map, the tool, the cross.
    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('v');
    await page.keyboard.press('Enter');
    await flag(page, /Pinned there as anchor|too far along/);
    await page.keyboard.press('?');
    await page.getByText('Map: turn the apparatus 5°').waitFor();
  }, 120_000);

  test('two taps measure distance, bearing and grade', async () => {
    const { page, x, y } = await atKettleBend();
    await page.keyboard.press('m');
    await page.mouse.click(x, y - 6);
    await flag(page, /other end/);
    await page.mouse.click(x + 12, y + 70);
    await flag(page, /\d+ ft, bearing \d+°, \d+ ft down, grade \d+ %, \d+°/);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.map-flag').count(), patient).toBe(0);
  }, 90_000);
});
