import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { type Book, emptyBook, live, restoreBook } from '../../src/book/index.ts';
import { readBook, readPlaces, writeCsv, writeGeoJson, writeGpx, writeKml } from '../../src/io/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { hostileTexts } from '../helpers/sample-book.ts';
import { appInChromium } from './app-in-chromium.ts';
import { bookReady, turnTo, written } from './book-page.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { smallDesk } from './page.ts';

/** A neighbouring district's place beside a road of the demo. */
const beside = { lon: -128.01572116, lat: 43.99981778 };
const neighbours = (name: string): Book =>
  restoreBook(
    {
      schema: 'brinkbook/book@1',
      tables: {
        sites: [{ id: `s-${name}`, name: `${name} site`, place: { ...beside, sideAzimuthDeg: 166 } }],
        marks: [
          {
            id: `m-${name}`,
            siteId: `s-${name}`,
            kind: 'tree',
            name: `${name} fir`,
            geometry: { type: 'Point', coordinates: [beside.lon, beside.lat] },
          },
        ],
      },
    },
    'The neighbours',
  );
const all = { sites: null, crashes: true };

describe.skipIf(withoutChromium())('files into the book and out of it', () => {
  const here = appInChromium();

  const at = onePage(here, smallDesk);
  const open = async (): Promise<Page> => {
    const page = await at('#/book?import');
    await bookReady(page);
    return page;
  };
  const give = (page: Page, label: string, name: string, text: string | Buffer) =>
    page.getByLabel(label).setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  /** The whole book as its file says it. */
  const bookOf = async (page: Page): Promise<Book> => {
    await turnTo(page, 'Give out');
    const { book } = await readBook(memorySource(await written(page, 'Write the book'), 'book'));
    await turnTo(page, 'Bring in');
    return book;
  };
  const names = (book: Book, table: 'sites' | 'marks') => live(book, table).map(({ name }) => name);

  test('GeoJSON, GPX, KML and CSV are shown first, added when told so, and taken back by one undo; a broken file changes nothing', async () => {
    const page = await open();
    const before = await bookOf(page);
    const files = [
      ['one.geojson', writeGeoJson(neighbours('one'), all)],
      ['two.gpx', writeGpx(neighbours('two'), all)],
      ['three.kml', writeKml(neighbours('three'), all)],
      ['four.csv', writeCsv(neighbours('four'), all)],
    ] as const;
    for (const [file, text] of files) {
      const name = file.split('.')[0]!;
      await give(page, 'Places', file, text);
      const found = page.getByRole('region', { name: `What ${file} would add` });
      await found.getByText('2 places').first().waitFor();
      const row = found.getByRole('listitem').filter({ hasText: `${name} fir` });
      // What a file cannot say, a person does.
      if (file.endsWith('.kml')) await row.getByRole('combobox').selectOption('tree');
      await found.getByRole('button', { name: 'Add 2' }).click();
      await page.getByText(`2 added from ${file}. Undo takes them back together.`).waitFor();
    }
    const filled = await bookOf(page);
    const four = ['one', 'two', 'three', 'four'];
    expect(names(filled, 'sites').sort()).toEqual(
      [...names(before, 'sites'), ...four.map((one) => `${one} site`)].sort(),
    );
    expect(names(filled, 'marks').filter((one) => one?.endsWith(' fir'))).toHaveLength(4);
    for (const { name, place, roadName } of live(filled, 'sites').filter(({ name }) => name.endsWith(' site'))) {
      expect([name, place.lon, place.lat]).toEqual([
        name,
        expect.closeTo(beside.lon, 6),
        expect.closeTo(beside.lat, 6),
      ]);
      expect(Math.abs(place.sideAzimuthDeg - 166), `${name} on ${roadName}`).toBeLessThan(20);
    }
    for (const [label, file, text] of [
      ['Places', 'bad.geojson', '{"type":"FeatureCollection","features":['],
      ['Places', 'bad.gpx', '<gpx><wpt'],
      ['Places', 'bad.csv', 'a,b\n"'],
      ['Crash records', 'bad.csv', 'colour,shape\nred,round\n'],
      ['A book', 'bad.brinkbook', 'PK\u0003\u0004 no book'],
      ['A book', 'newer.json', '{"schema":"brinkbook/book@99","tables":{}}'],
    ] as const) {
      await give(page, label, file, text);
      const why = page.getByRole('alert').filter({ hasText: 'The book is as it was.' });
      await why.filter({ hasText: file }).waitFor();
    }
    expect(await bookOf(page)).toEqual(filled);
    await turnTo(page, 'History');
    for (const [file] of [...files].reverse())
      await page.getByRole('button', { name: `undo: Bring in ${file}` }).click();
    await page.getByRole('button', { name: 'redo: Bring in one.geojson' }).waitFor();
    const after = await bookOf(page);
    for (const table of ['sites', 'marks'] as const)
      expect(names(after, table).sort()).toEqual(names(before, table).sort());
  }, 90_000);

  test('every form that goes out can be read back, chosen sites alone where some are chosen', async () => {
    const page = await open();
    const book = await bookOf(page);
    await turnTo(page, 'Give out');
    const read = (bytes: Buffer, name: string) =>
      readPlaces(bytes, name, { book: emptyBook(), newId: () => crypto.randomUUID() }).items;
    const sites = names(book, 'sites');
    expect(sites.length).toBeGreaterThan(5);
    for (const format of ['GeoJSON', 'GPX', 'KML', 'CSV']) {
      const found = read(await written(page, `Write ${format}`), `out.${format.toLowerCase()}`).map(({ name }) => name);
      expect(found, format).toEqual(expect.arrayContaining(sites));
    }
    const neighbour = String(await written(page, 'Write the page'));
    for (const name of sites) expect(neighbour).toContain(name);
    const copy = await readBook(memorySource(await written(page, 'Write the copy'), 'copy'));
    // Whole, a book lacks the edit that brought its crash records in.
    expect([copy.file!.manifest.content, copy.file!.log]).toEqual(['reading copy', null]);
    expect(copy.book.tables).toEqual(book.tables);
    await page.getByText(`All ${sites.length} sites`).click();
    await page.getByLabel('Kettle Bend').check();
    const one = read(await written(page, 'Write GPX'), 'out.gpx').filter(({ wants }) => wants === 'side');
    expect(one.map(({ name }) => name)).toEqual(['Kettle Bend']);
  }, 60_000);

  test('of crash records only day, place and severity come in, and they go out only when asked for', async () => {
    const page = await open();
    const rows = 'date,lat,lon,severity,plate,driver\n2020-02-03,44.0012,-128.02,injury,ABC-123,J. Doe\n,,,K,,\n';
    await give(page, 'Crash records', 'crashes.csv', rows);
    const found = page.getByRole('region', { name: 'What crashes.csv would add' });
    await found.getByText('Dropped and not kept: plate, driver.').waitFor();
    await found.getByText('1 not usable').waitFor();
    await found.getByRole('button', { name: 'Add 1' }).click();
    await page.getByText('1 crash records added from crashes.csv.').waitFor();
    await turnTo(page, 'Give out');
    const formats = ['GeoJSON', 'GPX', 'KML', 'CSV'];
    for (const format of formats) expect(String(await written(page, `Write ${format}`))).not.toContain('2020-02-03');
    const without = await readBook(memorySource(await written(page, 'Write the book'), 'book'));
    expect([without.book.tables.crashes, without.file!.manifest.leftOut.crashes]).toEqual([[], true]);
    await page.getByLabel('crash points (70)').check();
    const geojson = String(await written(page, 'Write GeoJSON'));
    expect(geojson).toContain('2020-02-03');
    const whole = await readBook(memorySource(await written(page, 'Write the book'), 'book'));
    expect(whole.book.tables.crashes.filter(({ on }) => on === '2020-02-03')).toEqual([
      expect.objectContaining({ severity: 'serious', at: { lon: -128.02, lat: 44.0012 } }),
    ]);
    for (const text of [geojson, JSON.stringify(whole.book)]) expect(text).not.toMatch(/ABC-123|Doe/);
  }, 60_000);

  test('text that would act is text on the screens, too', async () => {
    const page = await open();
    const texts = hostileTexts.map((text) => text.replaceAll('\u0000', ''));
    const csv = [
      'name,lat,lon,kind,notes',
      ...texts.map((text) => `"${text.replaceAll('"', '""')}",44.0,-128.0,tree,"${text.replaceAll('"', '""')}"`),
    ].join('\n');
    await give(page, 'Places', 'hostile.csv', csv);
    const found = page.getByRole('region', { name: 'What hostile.csv would add' });
    await found.getByRole('button', { name: /^Add \d+/ }).click();
    await page.getByText(/added from hostile.csv/).waitFor();
    await turnTo(page, 'History');
    await page.getByText('Bring in hostile.csv').first().waitFor();
    await turnTo(page, 'Rules');
    for (const text of texts.filter((one) => !/[\n\r\t]/.test(one))) {
      await page.getByLabel('District', { exact: true }).fill(text);
      await page.getByLabel('District', { exact: true }).press('Enter');
    }
    await turnTo(page, 'History');
    await page.goto(`${here.url}/#/survey/kettle-bend`);
    const panel = page.getByRole('region', { name: 'Site Kettle Bend' });
    await panel.waitFor({ timeout: 30_000 });
    const name = panel.getByLabel('Name', { exact: true });
    await name.fill('<img src=x onerror="document.title=1">\u202Egpj');
    await name.press('Enter');
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await page.getByTestId('sentence').waitFor({ timeout: 30_000 });
    await expect.poll(() => page.locator('[src="x"], [onerror], [onload]').count()).toBe(0);
    for (const leaf of ['photos', 'export', 'conflicts', 'events']) await page.goto(`${here.url}/#/book?${leaf}`);
    expect(await page.locator('[src="x"], [onerror], [onload]').count()).toBe(0);
  }, 90_000);
});
