import { describe, expect, it } from 'vitest';
import { type Book, emptyBook, live, restoreBook, tableNames, versionOf } from '../../../src/book/index.ts';
import { fullBook, oneOfEach } from '../../helpers/full-book.ts';

const json = (book: unknown): unknown => JSON.parse(JSON.stringify(book));
/** The book with one thing changed, as its file would hold it. */
function changed(
  change: (book: { schema: unknown; tables: Record<string, Record<string, unknown>[]> }) => void,
): unknown {
  const book = json(fullBook()) as Parameters<typeof change>[0];
  change(book);
  return book;
}

describe('a plain book', () => {
  it('comes back identical, with a record in every table', () => {
    const book = restoreBook(json(fullBook()), 'A.json');
    expect(Object.values(book.tables).every((records) => records.length > 0)).toBe(true);
    expect(restoreBook(json(book), 'A.json')).toEqual(book);
    expect(JSON.stringify(restoreBook(json(book), 'A.json'))).toBe(JSON.stringify(book));
  });

  it('may be empty and may leave tables out', () => {
    expect(restoreBook(json(emptyBook()), 'A.json')).toEqual(emptyBook());
    expect(restoreBook({ schema: 'brinkbook/book@1', tables: {} }, 'A.json')).toEqual(emptyBook());
  });

  it('fills in what may be missing, never to the better', () => {
    const place = { lon: -128, lat: 44, sideAzimuthDeg: 90 };
    const book = restoreBook(
      { schema: 'brinkbook/book@1', tables: { sites: [{ id: 's', name: 'S', place }], marks: [] } },
      'A.json',
    );
    expect(book.tables.sites[0]).toMatchObject({ patientPoint: null, patients: 1, deleted: false, pinnedAnchor: null });
  });

  it('keeps deleted records and leaves them out of the living', () => {
    const book = restoreBook(
      changed((b) => Object.assign(b.tables.sites![0]!, { deleted: true })),
      'A.json',
    );
    expect(book.tables.sites).toHaveLength(1);
    expect(live(book, 'sites')).toEqual([]);
  });
});

describe('a book that cannot be read is refused with one sentence', () => {
  const cases: [string, unknown, string][] = [
    ['no object', null, 'A.json is no book: expected "schema": "brinkbook/book@1"; choose a book file.'],
    ['no schema', { tables: {} }, 'A.json is no book: expected "schema": "brinkbook/book@1"; choose a book file.'],
    [
      'a newer one',
      changed((b) => {
        b.schema = 'brinkbook/book@7';
      }),
      'A.json is a book of version 7, this program reads up to version 1; update the program.',
    ],
    [
      'an unknown table',
      changed((b) => {
        b.tables.wells = [];
      }),
      'A.json has a table "wells" that a book does not have; remove it.',
    ],
    [
      'a poisoned table',
      JSON.parse('{"schema":"brinkbook/book@1","tables":{"__proto__":[]}}'),
      'A.json has a table "__proto__" that a book does not have; remove it.',
    ],
    [
      'a table that is no list',
      changed((b) => Object.assign(b.tables, { sites: 'x' })),
      'A.json: sites is no list of records; take another copy of the book.',
    ],
    [
      'a text for a number',
      changed((b) => {
        b.tables.ropes![0]!.lengthM = '60';
      }),
      'A.json: ropes "rope" has an unusable lengthM: expected number, but "60" came; correct it.',
    ],
    [
      'an endless number',
      changed((b) => {
        b.tables.ropes![0]!.lengthM = JSON.parse('1e999');
      }),
      'A.json: ropes "rope" has an unusable lengthM: expected a finite number, but Infinity came; correct it.',
    ],
    [
      'a number out of bounds',
      changed((b) => {
        b.tables.ropes![0]!.lengthM = 5000;
      }),
      'A.json: ropes "rope" has an unusable lengthM: expected 1 to 500, but 5000 came; correct it.',
    ],
    [
      'a field too many',
      changed((b) => {
        b.tables.kits![0]!.colour = 'red';
      }),
      'A.json: kits "kit" has a field "colour" that no such record has; remove it.',
    ],
    [
      'a missing field',
      changed((b) => {
        delete b.tables.sites![0]!.place;
      }),
      'A.json: sites "site" has no place; give one.',
    ],
    [
      'a poisoned id',
      changed((b) => {
        b.tables.kits![0]!.id = '__proto__';
      }),
      'A.json: kits "__proto__" has an unusable id: expected an id of letters, digits, dots, dashes and underscores, at most 64, but "__proto__" came; correct it.',
    ],
    [
      'a day that never was',
      changed((b) => {
        b.tables.drills![0]!.on = '2025-02-29';
      }),
      'A.json: drills "drill" has an unusable on: expected a day as YYYY-MM-DD, but "2025-02-29" came; correct it.',
    ],
    [
      'half a character',
      changed((b) => {
        b.tables.kits![0]!.name = 'x\ud800';
      }),
      'A.json: kits "kit" has an unusable name: expected whole characters, but "x\ud800" came; correct it.',
    ],
    [
      'an id twice',
      changed((b) => {
        b.tables.kits!.push(b.tables.kits![0]!);
      }),
      'A.json: kits "kit" is there twice; remove or rename one.',
    ],
    [
      'an open ring',
      changed((b) => {
        b.tables.events![0]!.area = {
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [0, 1],
              [1, 1],
              [1, 0],
            ],
          ],
        };
      }),
      'A.json: events "event" has an unusable area.coordinates.0: expected a ring that ends where it begins, but Array came; correct it.',
    ],
    [
      'limits that cross',
      changed((b) => {
        b.tables.angleRules![0]!.limits = { lowMaxDeg: 50, highMinDeg: 40 };
      }),
      'A.json: angleRules "rule" has an unusable limits: expected lowMaxDeg not over highMinDeg, but Object came; correct it.',
    ],
  ];
  it.each(cases)('%s', (_, book, sentence) => {
    expect(() => restoreBook(book, 'A.json')).toThrow(
      expect.objectContaining({ name: 'UserError', message: sentence }),
    );
  });

  it('a record out of every table, with any one field spoilt', () => {
    for (const table of tableNames) {
      for (const field of Object.keys(oneOfEach[table])) {
        const book = changed((b) => {
          b.tables[table]![0]![field] = { spoilt: true };
        });
        expect(() => restoreBook(book, 'A.json'), `${table}.${field}`).toThrow(
          new RegExp(`^A\\.json: ${table} ".*" has (an unusable|no|a field) .*${field}`),
        );
      }
    }
  });
});

describe('versions', () => {
  const steps = [
    (book: Readonly<Record<string, unknown>>): Record<string, unknown> => ({
      ...book,
      schema: 'brinkbook/book@2',
      tables: { kits: [] },
    }),
  ];
  it('are brought up one by one, and a newer one is refused by its number', () => {
    const old = { schema: 'brinkbook/book@1', tables: { ancient: 1 } };
    expect((restoreBook(old, 'A.json', steps) as Book).tables.kits).toEqual([]);
    expect(() => restoreBook({ ...old, schema: 'brinkbook/book@3' }, 'A.json', steps)).toThrow(
      /version 3, .* up to version 2/,
    );
    expect([versionOf(old), versionOf({ schema: 'brinkbook/book@01' }), versionOf([])]).toEqual([1, null, null]);
  });
});
