import { describe, expect, test } from 'vitest';
import { restoreBook, settingsOf } from '../../src/book/index.ts';
import { fileOfUpdates, logOfBook } from '../../src/io/book-file/log/index.ts';
import { readBook } from '../../src/io/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { leaves } from '../../src/ui/book/leaves.ts';
import { makePng } from '../helpers/make-png.ts';
import { appInChromium } from './app-in-chromium.ts';
import { auditPage } from './audit.ts';
import { bookReady, openLeaf, saved, turnTo, written } from './book-page.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { openPage, phone, sentenceLike, smallDesk } from './page.ts';

describe.skipIf(withoutChromium())('the book screen', () => {
  const here = appInChromium();
  const at = onePage(here, smallDesk);

  const open = (leaf: string) => openLeaf(here.browser, here.url, leaf);
  const textFile = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

  test('the shipped kit is made our own, a value is refused with its sentence and kept, and all is there after a reload', async () => {
    // A district of one's own begins without a kit; the demo has one.
    const { page, close } = await openPage(here.browser, `${here.url}/#/open`, smallDesk);
    await page.setInputFiles('input[name=elevation]', 'data/demo/elevation-10m.tif');
    await page.setInputFiles('input[name=roads]', 'data/demo/roads.geojson');
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await sentenceLike(page, /No sites yet/);
    await page.goto(`${here.url}/#/book?kit`);
    await page.getByText('assumed, common practice').waitFor();
    await page.getByRole('button', { name: 'write them in' }).click();
    const kit = page.getByRole('listitem', { name: 'Engine rope kit' });
    const length = kit.getByRole('listitem', { name: 'rope' }).getByLabel('Length, ft').first();
    expect(await length.inputValue()).toBe('196.85');
    await length.fill('9000');
    await length.press('Enter');
    await kit.getByText('expected 1 to 500').waitFor();
    expect(await length.inputValue()).toBe('9000');
    await length.fill('no');
    await length.press('Enter');
    await kit.getByText('Length cannot be "no": expected a number of ft; correct it.').waitFor();
    await length.fill('150');
    await length.press('Enter');
    await saved(page);
    await page.reload();
    await expect.poll(() => length.inputValue(), { timeout: 30_000 }).toBe('150');
    await turnTo(page, 'History');
    await page.getByRole('button', { name: 'undo: Length of rope' }).click();
    await turnTo(page, 'Kit');
    await expect.poll(() => length.inputValue()).toBe('196.85');
    await close();
  }, 60_000);

  test('the book’s own rule is that of the study; a rate out of its bounds is refused', async () => {
    const { page, close } = await openPage(here.browser, `${here.url}/#/study/kettle-bend`, smallDesk);
    await sentenceLike(page, /rule 30\/45/);
    await page.goto(`${here.url}/#/book?rules`);
    await page.getByRole('button', { name: 'add a rule' }).click();
    const form = page.getByRole('form', { name: 'Add a rule' });
    await form.getByLabel('Name').fill('Ours');
    await form.getByLabel('Low under').fill('50');
    await form.getByLabel('High from').fill('40');
    await form.getByLabel('Where it is written').fill('our procedures');
    await form.getByRole('button', { name: 'Add' }).click();
    await form.getByText('expected lowMaxDeg not over highMinDeg').waitFor();
    await form.getByLabel('Low under').fill('20');
    await form.getByRole('button', { name: 'Add' }).click();
    await page.getByLabel('Low under, high from, degrees').selectOption({ label: 'Ours, 20/40, the book’s own' });
    await page.getByLabel('one hauler, short pulls: 50 lbf', { exact: true }).fill('0.9');
    await page.getByLabel('Reason for one hauler, short pulls').fill('measured');
    await page.getByText('"0.9" came: expected 0.1 to 0.3 kN').waitFor();
    await saved(page);
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await sentenceLike(page, /rule Ours|rule 20\/40/);
    await page.reload();
    await sentenceLike(page, /rule Ours|rule 20\/40/);
    await close();
  }, 60_000);

  test('a book says that its district is made up: at the head, in what is written, undone, and taken over by another copy', async () => {
    const { page, close } = await open('rules');
    const madeUp = page.getByLabel('Made up, for trying out');
    // The demo says so of itself, once it has been read into the new book.
    await expect.poll(() => madeUp.inputValue()).toBe('yes');
    await page.getByLabel('District', { exact: true }).fill('Ours');
    await page.getByLabel('District', { exact: true }).press('Enter');
    await madeUp.selectOption('no');
    await saved(page);
    await turnTo(page, 'Give out');
    const buffer = await written(page, 'Write the book');
    const { book } = await readBook(memorySource(buffer, 'book'));
    expect(settingsOf(book)).toMatchObject({ district: 'Ours', invented: false });
    await turnTo(page, 'History');
    await page.getByRole('button', { name: 'undo: Made up, for trying out of the book' }).click();
    await turnTo(page, 'Rules');
    await expect.poll(() => madeUp.inputValue()).toBe('yes');
    await page.reload();
    await bookReady(page);
    await expect.poll(() => madeUp.inputValue()).toBe('yes');
    // Another copy of the same book takes the word over with the rest.
    const other = await open('rules');
    await turnTo(other.page, 'Bring in');
    const picked = { name: 'ours.brinkbook.zip', mimeType: 'application/zip', buffer };
    await other.page.getByLabel('A book').setInputFiles(picked);
    await other.page.getByRole('button', { name: 'Join it with this book' }).click();
    await turnTo(other.page, 'Rules');
    await expect.poll(() => other.page.getByLabel('Made up, for trying out').inputValue()).toBe('no');
    await other.page.goto(`${here.url}/#/survey`);
    await expect.poll(() => other.page.locator('.head-name').textContent()).toMatch(/^Ours/);
    await other.close();
    await close();
  }, 60_000);

  test('a deleted site is brought back', async () => {
    const page = await at('#/survey/kettle-bend');
    await page.getByRole('button', { name: 'delete', exact: true }).first().click();
    await page.waitForFunction(() => !location.hash.includes('kettle-bend'));
    await page.goto(`${here.url}/#/book?history`);
    const deleted = page.getByRole('list', { name: 'Deleted' });
    await deleted.getByText('Kettle Bend').waitFor();
    await deleted.getByRole('button', { name: 'bring back' }).click();
    await page.getByText('Nothing is deleted.').waitFor();
    await page.goto(`${here.url}/#/survey/kettle-bend`);
    await page.getByRole('region', { name: 'Site Kettle Bend' }).waitFor();
  }, 60_000);

  test('an event marks the sites in its area: in the list, as a stop, and as screening only where the heights are older', async () => {
    const page = await at('#/book?events');
    await page.getByRole('button', { name: 'add an event' }).click();
    const form = page.getByRole('form', { name: 'Add an event' });
    await form.getByLabel('Name').fill('March slide');
    await form.getByLabel('Kind').selectOption('slide');
    await form.getByLabel('On').fill('2026-03-01');
    await form.getByLabel('Area').fill('43.99982, -128.01572 within 300');
    await form.getByRole('button', { name: 'Add' }).click();
    await saved(page);
    await page.goto(`${here.url}/#/survey`);
    await page.getByRole('button', { name: /Kettle Bend.*changed 2026-03-01/ }).waitFor({ timeout: 30_000 });
    expect(await page.getByRole('button', { name: /Split Oak.*changed/ }).count()).toBe(0);
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await sentenceLike(page, /Screening only, the elevation is older than March slide, 2026-03-01/);
    const warnings = page.getByRole('region', { name: 'Warnings' });
    await warnings.getByText('stop').first().waitFor();
    await warnings
      .getByText(/March slide, 2026-03-01/)
      .first()
      .waitFor();
    await page.goto(`${here.url}/#/study/split-oak`);
    await sentenceLike(page, /^Plan as low/);
    await page.goto(`${here.url}/#/book?history`);
    await page.getByRole('button', { name: /^undo: / }).click();
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await sentenceLike(page, /^(?!Screening only)/);
  }, 90_000);

  test('two books are joined: both values of a field are shown with who and when, and one is decided on', async () => {
    const one = await open('rules');
    const two = await open('rules');
    for (const [{ page }, who, months] of [
      [one, 'Ada', '6'],
      [two, 'Bo', '18'],
    ] as const) {
      await turnTo(page, 'Where it is kept');
      await page.getByLabel('Name').fill(who);
      await page.getByLabel('Name').press('Enter');
      await turnTo(page, 'Rules');
      await page.getByLabel('Months between field checks').fill(months);
      await page.getByLabel('Months between field checks').press('Enter');
      await saved(page);
    }
    await turnTo(two.page, 'Give out');
    const buffer = await written(two.page, 'Write the book');
    await turnTo(one.page, 'Bring in');
    const picked = { name: 'bo.brinkbook.zip', mimeType: 'application/zip', buffer };
    await one.page.getByLabel('A book').setInputFiles(picked);
    await one.page.getByText('1 of its').waitFor();
    await one.page.getByRole('button', { name: 'Join it with this book' }).click();
    const conflict = one.page.getByRole('listitem', { name: 'review months of settings the book' });
    await conflict.waitFor();
    const words = (await conflict.textContent())!;
    expect(words).toMatch(/Ada, this page, \d{4}-\d\d-\d\d \d\d:\d\d/);
    expect(words).toMatch(/Bo, this page, \d{4}-\d\d-\d\d \d\d:\d\d/);
    await conflict.getByRole('button', { name: '18', exact: true }).click();
    await one.page.getByText('Nothing to decide.').waitFor();
    await turnTo(one.page, 'Rules');
    expect(await one.page.getByLabel('Months between field checks').inputValue()).toBe('18');
    // A book that this one has nothing in common with is joined only where somebody insists.
    await turnTo(one.page, 'Bring in');
    await one.page
      .getByLabel('A book')
      .setInputFiles({ ...picked, name: 'strange.brinkbook.zip', buffer: Buffer.from(await strangeBook()) });
    await one.page.getByText('The two books have no edit in common').waitFor();
    const join = one.page.getByRole('button', { name: 'Join it with this book' });
    expect(await join.isDisabled()).toBe(true);
    await one.page.getByLabel('join them all the same').check();
    expect(await join.isDisabled()).toBe(false);
    await one.page.getByRole('button', { name: 'leave it' }).click();
    // A broken copy is refused whole.
    await turnTo(one.page, 'Bring in');
    await one.page.getByLabel('A book').setInputFiles({ ...picked, buffer: picked.buffer.subarray(0, 900) });
    await one.page.getByText('The book is as it was.').waitFor();
    await one.close();
    await two.close();
  }, 60_000);

  test('a photo is kept, one that shows a patient goes out only where asked for, and is there after a reload', async () => {
    const page = await at('#/book?photos');
    const photo = { name: 'bend.png', mimeType: 'image/png', buffer: Buffer.from(makePng(80, [90, 90, 120])) };
    await page.getByLabel('Photo from the camera').setInputFiles(photo);
    await page.getByLabel('What it shows').fill('the lip');
    await page.getByRole('button', { name: 'Keep the photo' }).click();
    await page.getByText('Say whether the photo shows a patient.').waitFor();
    expect(await page.getByLabel('What it shows').inputValue()).toBe('the lip');
    await page.getByRole('radio', { name: 'yes' }).check();
    await page.getByRole('button', { name: 'Keep the photo' }).click();
    await page.getByText('leaves the book only when asked for').waitFor();
    await page.reload();
    const image = page.getByRole('img', { name: 'the lip' });
    await image.waitFor({ timeout: 30_000 });
    await expect.poll(() => image.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBe(80);
    await turnTo(page, 'Give out');
    expect(String(await written(page, 'Write the page'))).toContain('Left out: 1 photo that shows a patient.');
    await page.getByLabel('photos that show a patient').check();
    expect(String(await written(page, 'Write the page'))).toContain('<img alt="the lip" src="data:image/jpeg');
  }, 60_000);

  test.each([
    ['desk', 'light'],
    ['phone', 'dark'],
  ] as const)(
    'axe finds nothing serious on any leaf, %s, %s',
    async (size, colorScheme) => {
      const options = { ...(size === 'phone' ? phone : smallDesk), colorScheme };
      const { page, close } = await openPage(here.browser, `${here.url}/#/book`, options);
      await bookReady(page);
      for (const { name, words } of leaves) {
        await page.goto(`${here.url}/#/book?${name}`);
        await page.getByRole('heading', { level: 1, name: words }).waitFor();
        await page.waitForTimeout(150);
        expect(await auditPage(page), name).toEqual([]);
      }
      await page.goto(`${here.url}/#/book?import`);
      await page.getByLabel('Places').setInputFiles(textFile('open.csv', 'name,lat,lon\nA,44,-128\nB,44.001,-128\n'));
      await page.getByLabel('All 2 whose kind the file does not say are').waitFor();
      expect(await auditPage(page), 'a file of places').toEqual([]);
      await close();
    },
    60_000,
  );
});

/** The book of a district that has nothing to do with the demo. */
async function strangeBook(): Promise<Uint8Array> {
  const settings = [{ id: 'book', district: 'Elsewhere' }];
  const plain = restoreBook({ schema: 'brinkbook/book@1', tables: { settings } }, 'Elsewhere');
  const updates = logOfBook(plain, { actor: 'elsewhere', who: 'Cy', device: 'desk', atMs: 1000 });
  const options = { asked: { crashes: true, patientPhotos: true }, content: 'whole', writtenAtMs: 5000 } as const;
  return (await fileOfUpdates(updates, async () => null, options)).bytes;
}
