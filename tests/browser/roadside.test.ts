import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { makePng } from '../helpers/make-png.ts';
import { appInChromium } from './app-in-chromium.ts';
import { auditPage } from './audit.ts';
import { withoutChromium } from './chromium.ts';
import { openPage, phone } from './page.ts';

describe.skipIf(withoutChromium())('the roadside check on a phone', () => {
  const here = appInChromium();

  const heading = (page: Page, words: string) =>
    page.getByRole('heading', { level: 2, name: words }).waitFor({ timeout: 20_000 });
  const keep = (page: Page) => page.locator('.check-keys .keep').click();
  const step = (page: Page, n: number) => page.locator('.check-steps li').nth(n - 1);
  /** The computed angle, as the list of steps has it. */
  const computedAngle = async (page: Page): Promise<number> => {
    const words = step(page, 2).locator('.c');
    await expect.poll(() => words.textContent(), { timeout: 30_000 }).toMatch(/^\d+°/);
    return Number.parseInt((await words.textContent())!, 10);
  };
  const dial = (page: Page) => page.getByRole('slider');
  const typed = (page: Page, value: number) => page.locator('.dial-typed input').fill(String(value));

  test('a worse angle counts at once, a better one after two readings, a name and a reason', async () => {
    // Nobody has measured here yet.
    const { page, complaints, close } = await openPage(here.browser, `${here.url}/#/check/tender-verge`, phone);
    await heading(page, 'Tape from the edge to the anchor');
    const angle = await computedAngle(page);
    await page.getByRole('button', { name: 'cannot reach it' }).click();
    await heading(page, 'Clinometer at the steepest stretch');
    expect(await step(page, 1).locator('.m').textContent()).toBe('not reached');
    // A dial that is there before the study follows what is computed, as its words say.
    await page.reload();
    await heading(page, 'Clinometer at the steepest stretch');
    await expect.poll(() => dial(page).getAttribute('aria-valuenow')).toBe(String(angle));

    // Better: the first is kept and asked for again.
    await typed(page, angle - 4);
    expect(await page.locator('.check-keys .keep').textContent()).toContain('first of two readings');
    await keep(page);
    await page.getByText('the computed value stays').waitFor();
    await typed(page, angle - 3);
    await page.getByText('another person must read it, or another day').waitFor();
    await page.getByLabel('Read by').fill('C. Second');
    await page.getByText('second of two readings').waitFor();
    await keep(page);
    await page.getByRole('button', { name: 'Take them' }).click();
    await page.getByText('A gentler value needs a name and a reason.').waitFor();
    await page.getByLabel('Name').fill('A. Reader');
    await page.getByLabel('Reason').fill('cut bank since the survey');
    await page.getByRole('button', { name: 'Take them' }).click();
    // Of two better readings the worse one counts.
    await page.getByRole('button', { name: `go on with ${angle - 3}°` }).click();
    await heading(page, 'Barrier along the edge');

    // Worse: at once.
    await step(page, 2).getByRole('button').click();
    await step(page, 7).getByRole('button').click();
    await heading(page, 'The slope above the road');
    await typed(page, 80);
    expect(await page.locator('.check-keys .keep').textContent()).toContain('counts at once');
    await dial(page).focus();
    await page.keyboard.press('ArrowRight');
    expect(await dial(page).getAttribute('aria-valuenow')).toBe('81');
    await keep(page);
    await heading(page, 'Barrier along the edge');
    expect(await step(page, 7).locator('.m').textContent()).toContain('81°');
    expect(complaints).toEqual([]);
    await close();
  }, 60_000);

  test('with no signal, over a reload, to the sign-off in the book', async () => {
    const { page, strayRequests, close } = await openPage(here.browser, `${here.url}/#/check/kettle-bend`, phone);
    await computedAngle(page);
    for (const title of ['Tape from the edge to the anchor', 'Clinometer at the steepest stretch']) {
      await heading(page, title);
      await page.getByRole('button', { name: 'cannot reach it' }).click();
    }
    await heading(page, 'Barrier along the edge');
    await page.getByRole('button', { name: 'rail', exact: true }).click();
    await keep(page);
    await heading(page, 'Ground where apparatus would stand');
    expect(await step(page, 3).locator('.m').textContent()).toBe('rail, marked');
    await page.reload();
    await heading(page, 'Ground where apparatus would stand');
    await page.context().setOffline(true);
    await page.getByText('no signal; kept here').waitFor();
    await page.getByRole('button', { name: 'firm', exact: true }).click();
    await keep(page);
    await page.getByText('tried at the second wheel').waitFor();
    await keep(page);
    await page.getByText('Firm ground needs a name and a reason.').waitFor();
    await page.getByRole('button', { name: 'not tried' }).click();
    await keep(page);
    await heading(page, 'Two anchors, each with a photo');
    const photo = { name: 'tree.png', mimeType: 'image/png', buffer: Buffer.from(makePng(64, [80, 120, 70])) };
    for (const name of ['the big pine', 'the rock']) {
      await page.getByLabel(/^(First|Second) anchor/).selectOption('');
      await page.getByLabel('Which').fill(name);
      await page.getByRole('button', { name: 'sound', exact: true }).click();
      await page.setInputFiles('.check-body input[type=file]', photo);
      await keep(page);
      if (name === 'the big pine') await page.getByText('2 of 2').waitFor();
    }
    await heading(page, 'Radio at the edge');
    await page.getByRole('button', { name: 'dead here' }).click();
    await keep(page);
    await heading(page, 'The slope above the road');
    await page.getByRole('button', { name: 'cannot reach it' }).click();
    await heading(page, 'Sign off');
    expect(await page.locator('.check-body').textContent()).toContain(
      'As computed, not looked at: edge to anchor, steepest stretch, look up.',
    );
    await page.getByRole('button', { name: 'sign off', exact: true }).click();
    await page.getByText('Say who signs.').waitFor();
    await page.getByLabel('Name').fill('B. Signer');
    await page.getByLabel('Conditions').fill('dry, clear');
    await page.getByRole('button', { name: 'sign off', exact: true }).click();
    await page.waitForFunction(() => location.hash.startsWith('#/study/kettle-bend'));
    await page.context().setOffline(false);

    await page.goto(`${here.url}/#/book?history`);
    await page.reload();
    const history = page.getByRole('list', { name: 'History' });
    await history.getByText('Sign off').first().waitFor({ timeout: 30_000 });
    const words = (await history.textContent())!;
    expect(words).toContain('Mark the barrier');
    expect(words).toContain('Look at the anchor the rock');
    await page.goto(`${here.url}/#/book?photos`);
    await page.locator('.photo-list img').first().waitFor();
    expect(await page.locator('.photo-list li').count()).toBe(2);
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await page.locator('.site-line', { hasText: /when driving east$/ }).waitFor();
    expect(strayRequests).toEqual([]);
    await close();
  }, 60_000);

  test('axe finds nothing serious at any step, every key is large enough for a thumb, the caution is whole', async () => {
    const { page, close } = await openPage(here.browser, `${here.url}/#/check/kettle-bend`, phone);
    await computedAngle(page);
    for (let n = 1; n <= 8; n++) {
      await step(page, n).getByRole('button').click();
      await page.waitForTimeout(100);
      expect(await auditPage(page), `step ${n}`).toEqual([]);
      const small = await page
        .locator('.check button:visible')
        .evaluateAll((keys) =>
          keys.filter((key) => key.getBoundingClientRect().height < 43.9).map((key) => key.textContent),
        );
      expect(small, `step ${n}`).toEqual([]);
      // All eight steps are in sight, whichever is in hand.
      const work = (await page.locator('.check-work').boundingBox())!.y;
      const ends = await page
        .locator('.check-steps li')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect()));
      expect(ends.filter(({ top, bottom }) => top >= 0 && bottom <= work + 0.5).length, `step ${n}`).toBe(8);
      // The whole caution stands on the screen before anybody scrolls.
      await page.evaluate(() => scrollTo(0, 0));
      const caution = (await page.locator('.check-work .caution').boundingBox())!;
      expect(caution.y + caution.height, `step ${n}`).toBeLessThanOrEqual(844.5);
    }
    await close();
  }, 60_000);
});
