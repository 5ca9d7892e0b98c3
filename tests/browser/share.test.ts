import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { readPdf } from '../helpers/read-pdf.ts';
import { appInChromium } from './app-in-chromium.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { sentenceLike, smallDesk } from './page.ts';

/** A shared machine may take a while. */
const patient = { timeout: 20_000 };

/** The file that a key of the page gives, with its name. */
async function given(
  page: Page,
  key: string,
  before: () => Promise<void> = () => Promise.resolve(),
): Promise<{ name: string; text: string }> {
  await before();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: key, exact: true }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile((await download.path())!, 'utf8') };
}

describe.skipIf(withoutChromium())('sharing', () => {
  const here = appInChromium();
  const at = onePage(here, { ...smallDesk, permissions: ['clipboard-read', 'clipboard-write'] });

  test('one site, from the keyboard: sheet, places, position; the link once the book says where it is published', async () => {
    const page = await at('#/study/kettle-bend');
    await sentenceLike(page, /Plan as/);
    await page.keyboard.press('h');
    const block = page.locator('#share');
    await block.getByText('geo:43.99982,-128.01572').waitFor();

    const sheet = await given(page, 'Plan sheet');
    expect(sheet.name).toBe('kettle-bend-plan.html');
    expect(sheet.text).toContain('Check card, Kettle Bend');
    expect(sheet.text).toContain('Tamarrow Fire District');
    expect(sheet.text).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    const places = await given(page, 'GPX');
    expect(places.name).toBe('kettle-bend.gpx');
    // The site with the sign and the two trees that belong to it.
    expect(places.text.match(/<wpt /g)).toHaveLength(4);
    expect((await given(page, 'KML')).text).toContain('<name>Kettle Bend</name>');

    const copy = async (what: string): Promise<string> => {
      await block.getByRole('button', { name: `Copy: ${what}` }).click();
      return page.evaluate(() => navigator.clipboard.readText());
    };
    await expect.poll(() => copy('Position'), patient).toBe('43° 59.989′ N, 128° 0.943′ W');
    await expect.poll(() => copy('US National Grid'), patient).toBe('9T WJ 78914 72323');

    await block.getByRole('link', { name: 'Rules' }).click();
    const address = page.getByLabel('Where the book is published');
    await address.fill('fire.example');
    await address.press('Enter');
    await page.getByText(/expected a web address such as/).waitFor();
    await address.fill('https://fire.example/tamarrow');
    await address.press('Enter');
    await expect.poll(() => page.getByText(/expected a web address/).count(), patient).toBe(0);
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await sentenceLike(page, /Plan as/);
    await page.keyboard.press('h');
    const link = 'https://fire.example/tamarrow/call/#site=kettle-bend&at=43.99982,-128.01572';
    await expect.poll(() => copy('Link'), patient).toBe(link);
  }, 120_000);

  test('a book of chosen sites: printed from the screen page by page, stopped, and written as a file', async () => {
    const page = await at('#/book?export');
    await page.getByText('All 20 sites').click();
    for (const name of ['Kettle Bend', 'Coin Toss']) await page.getByLabel(name, { exact: true }).check();
    await page.getByText('Plan sheets of 2 sites').waitFor();
    // The browser's own dialogue would wait for a person: the page that it would print is printed here.
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-asked-to-print', 'yes');
    });
    await page.getByRole('button', { name: 'Print them' }).click();
    await page.locator('[data-asked-to-print]').waitFor({ state: 'attached' });
    const pages = await readPdf(await page.pdf({ preferCSSPageSize: true }));
    expect(pages.map(({ text }) => /Index|plan sheets|Check card|Coin Toss|Kettle Bend/.exec(text)?.[0])).toEqual([
      'plan sheets',
      'Coin Toss',
      'Check card',
      'Kettle Bend',
      'Check card',
    ]);
    for (const { widthMm, heightMm } of pages) {
      expect(Math.abs(widthMm - 215.9)).toBeLessThan(0.5);
      expect(Math.abs(heightMm - 279.4)).toBeLessThan(0.5);
    }
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.print-pages').count()).toBe(0);

    const sheets = await given(page, 'Write the sheets');
    expect(sheets.name).toBe('tamarrow-fire-district-plan-sheets.html');
    expect(sheets.text.match(/<section class="page">/g)).toHaveLength(5);

    await page.getByLabel('Coin Toss', { exact: true }).uncheck();
    await page.getByLabel('Kettle Bend', { exact: true }).uncheck();
    await page.getByRole('button', { name: 'Print them' }).click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('Stopped; nothing was written.').waitFor();
  }, 120_000);

  test('the photo of a site stands in the call view and on its sheet; a patient’s photo in neither', async () => {
    const page = await at('#/study/coin-toss');
    await sentenceLike(page, /Plan as/);
    const block = page.getByRole('region', { name: 'Photos' });
    for (const [caption, patient] of [
      ['somebody hurt', 'yes'],
      ['the lip', 'no'],
    ] as const) {
      const buffer = Buffer.from(await page.evaluate(paintPng, caption), 'base64');
      await block
        .getByLabel('Photo from the camera')
        .setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer });
      await block.getByLabel('What it shows').fill(caption);
      await block.getByRole('radio', { name: patient }).check();
      await block.getByRole('button', { name: 'Keep the photo' }).click();
      await block.getByText(caption, { exact: false }).first().waitFor();
    }
    const sheet = await given(page, 'Plan sheet', () => page.keyboard.press('h'));
    expect(sheet.text.match(/<image /g)).toHaveLength(2);
    expect(sheet.text).toContain('the lip');
    expect(sheet.text.includes('somebody hurt')).toBe(false);

    const call = await page.context().newPage();
    // The plain copy that readers open is written once edits have settled.
    await page.waitForTimeout(3500);
    await page.goto('about:blank');
    await call.goto(`${here.url}/call/#site=coin-toss`);
    const photo = call.getByRole('img', { name: 'the lip' });
    await photo.waitFor({ timeout: 60_000 });
    expect(await photo.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBe(64);
    await call.getByRole('button', { name: 'Plan sheet' }).click();
    await call.getByTestId('sheet').getByText('the lip').last().waitFor();
    // A white page would light the cab at night.
    const sides = call.getByTestId('sheet').locator('> div > svg');
    await expect.poll(() => sides.count()).toBe(3);
    for (const side of await sides.all())
      expect(await side.evaluate((svg) => getComputedStyle(svg).filter)).toBe('invert(0.92)');
    expect(await call.getByText('somebody hurt').count()).toBe(0);
    await call.close();
  }, 150_000);
});

/** A small picture in one colour made from a word, as base64. For the page. */
function paintPng(word: string): string {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [64, 48];
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = word === 'the lip' ? '#446' : '#644';
  pen.fillRect(0, 0, 64, 48);
  return canvas.toDataURL('image/png').split(',')[1]!;
}
