import { describe, expect, test } from 'vitest';
import { type Book, bookOfSite, live } from '../../../src/book/index.ts';
import { type SheetInputs, sheetFunctions } from '../../../src/workers/sheet/index.ts';
import { fullBook } from '../../helpers/full-book.ts';
import { studyWithLayouts } from '../../helpers/study-with-layouts.ts';
import { madeRoad, madeSite } from '../../ui/call/sites.ts';

const study = studyWithLayouts();

const inputs = (book: Book | null): SheetInputs => {
  const listed = book && live(book, 'sites')[0]!;
  return {
    study,
    name: listed?.name ?? 'Kettle Bend',
    site: madeSite({ id: listed?.id ?? 'kettle-bend', mile: 4.2 }),
    pack: { district: 'Invented district', roads: [madeRoad('Lantern Creek Road', null, 0, 3)], units: 'us' },
    book,
    photos: [],
    today: '2026-06-01',
    address: 'https://fire.example/tamarrow/',
  };
};

describe('plan sheets drawn away from the page', () => {
  test('gives the sides asked for and no other; what is asked can be copied to a worker', async () => {
    const of = structuredClone(inputs(null));
    const drawn = await sheetFunctions.draw({ of, sides: ['phone', 'front'] });
    expect(Object.keys(drawn)).toEqual(['phone', 'front']);
    for (const side of Object.values(drawn)) expect(side).toMatch(/^<svg[^>]*>[\s\S]*Kettle Bend[\s\S]*<\/svg>$/);
    const { html, back } = await sheetFunctions.draw({ of, sides: ['html', 'back'] });
    expect(html).toMatch(/^<!doctype html>/i);
    expect(back).toContain('Check card, Kettle Bend');
  });

  test("a site's part of the book draws the sheet of the whole book", async () => {
    const book = fullBook();
    const sides = ['phone', 'front', 'back', 'html'] as const;
    const whole = inputs(book);
    const crowded = crowd(book);
    const part = bookOfSite(crowded, whole.site!.id);
    expect(part.tables.sites).toHaveLength(1);
    expect(JSON.stringify(part)).not.toContain('somewhere-else');
    expect(await sheetFunctions.draw({ of: { ...whole, book: part }, sides })).toEqual(
      await sheetFunctions.draw({ of: { ...whole, book: crowded }, sides }),
    );
  });
});

/** The book with every record of the site once more for another one. */
function crowd(book: Book): Book {
  const tables = Object.entries(book.tables).map(([table, records]) => {
    const other = (records as readonly { id: string; siteId?: string | null }[]).flatMap((record) =>
      table === 'sites'
        ? [{ ...record, id: 'somewhere-else' }]
        : record.siteId
          ? [{ ...record, id: `${record.id}.somewhere-else`, siteId: 'somewhere-else' }]
          : [],
    );
    return [table, [...records, ...other]];
  });
  return { ...book, tables: Object.fromEntries(tables) };
}
