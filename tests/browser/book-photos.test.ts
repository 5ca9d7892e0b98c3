import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { live } from '../../src/book/index.ts';
import { readBook } from '../../src/io/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { exifBlock, secret } from '../helpers/sample-images.ts';
import { appInChromium } from './app-in-chromium.ts';
import { auditPage } from './audit.ts';
import { written } from './book-page.ts';
import { withoutChromium } from './chromium.ts';
import { openPage, smallDesk } from './page.ts';

/** What `exifBlock` says: 44.0123 N, 128.0456 W, on 3 May 2026. */
const told = { lon: -128.0456, lat: 44.0123 };

describe.skipIf(withoutChromium())('photos on a study', () => {
  const here = appInChromium();

  const read = async (page: Page, key: string) => readBook(memorySource(await written(page, key), 'book'));

  test('are taken there, lose their camera data, keep their place only where told to, and are shown large by a tap', async () => {
    const { page, complaints, close } = await openPage(here.browser, `${here.url}/#/study/kettle-bend`, smallDesk);
    const block = page.getByRole('region', { name: 'Photos' });
    await block.waitFor({ timeout: 30_000 });
    await block.getByText('No photos yet.').waitFor();
    const take = async (colour: string) => {
      const buffer = withExif(Buffer.from(await page.evaluate(paintJpeg, colour), 'base64'));
      expect(buffer.includes(secret)).toBe(true);
      await block
        .getByLabel('Photo from the camera')
        .setInputFiles({ name: 'lip.jpg', mimeType: 'image/jpeg', buffer });
      await block.getByText('keep where the camera says it was taken, 44.01230, -128.04560').waitFor();
    };
    await take('#446');
    await block.getByLabel('What it shows').fill('the lip');
    await block.getByRole('radio', { name: 'no' }).check();
    await block.getByRole('button', { name: 'Keep the photo' }).click();
    await block.getByText('the lip, 2026-05-03').waitFor();
    await block.getByText('not looked for number plates: not published unless asked for').waitFor();
    await block.getByRole('button', { name: 'no number plate in it' }).click();
    await expect.poll(() => block.getByText('not looked for number plates').count()).toBe(0);
    await take('#644');
    await block.getByLabel('What it shows').fill('the litter');
    await block.getByRole('radio', { name: 'yes' }).check();
    await block.getByLabel('keep where the camera says').check();
    await block.getByRole('button', { name: 'Keep the photo' }).click();
    await block.getByText('the litter, 2026-05-03, taken at 44.01230, -128.04560').waitFor();

    const key = block.getByRole('button', { name: 'Show large: the lip' });
    await key.press('Enter');
    const large = page.getByRole('dialog', { name: 'Photo, large' });
    const picture = large.getByRole('img', { name: 'the lip' });
    await expect.poll(() => picture.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBe(640);
    expect(await auditPage(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await large.waitFor({ state: 'hidden' });
    await page.goto(`${here.url}/#/book?export`);
    const plain = await read(page, 'Write the copy');
    const history = await read(page, 'Write the book');
    await page.getByLabel('photos that show a patient (1)').check();
    const asked = await read(page, 'Write the book');
    expect(live(plain.book, 'photos')).toEqual([
      expect.objectContaining({
        ...{ caption: 'the lip', takenOn: '2026-05-03', at: null, widthPx: 640, heightPx: 480 },
        ...{ showsPatient: false, showsPlate: false },
      }),
    ]);
    // With the history the words of such a photo go along, the picture does not.
    expect(live(history.book, 'photos')).toHaveLength(2);
    for (const { file } of [plain, history])
      expect([file!.photoHashes, file!.manifest.leftOut.patientPhotos]).toEqual([
        [live(plain.book, 'photos')[0]!.hash],
        true,
      ]);
    const both = live(asked.book, 'photos').sort((a, b) => (a.caption < b.caption ? -1 : 1));
    expect(both.map(({ caption, at }) => [caption, at])).toEqual([
      ['the lip', null],
      ['the litter', { lon: expect.closeTo(told.lon, 6), lat: expect.closeTo(told.lat, 6) }],
    ]);
    let seen = 0;
    await asked.file!.eachPhoto(async ({ bytes }) => {
      seen++;
      for (const word of [secret, 'Exif', '2026:05:03']) expect(Buffer.from(bytes).includes(word), word).toBe(false);
    });
    expect(seen).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  }, 90_000);
});

/** Runs in the page: a JPEG of 640 × 480 pixels in one colour, base64. */
function paintJpeg(colour: string): string {
  const canvas = document.createElement('canvas');
  canvas.width = 640;
  canvas.height = 480;
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = colour;
  pen.fillRect(0, 0, 640, 480);
  return canvas.toDataURL('image/jpeg').split(',')[1]!;
}

/** The JPEG with a camera's Exif behind its start. */
function withExif(jpeg: Buffer): Buffer {
  const exif = Buffer.concat([Buffer.from('Exif\0\0'), exifBlock({ little: false, orientation: 1 })]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(exif.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, exif, jpeg.subarray(2)]);
}
