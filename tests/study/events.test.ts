import { describe, expect, it } from 'vitest';
import { type Book, type EventRecord, readRecord, restoreBook, SETTINGS_ID } from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { planPageSvg, sheetOfBook } from '../../src/plan/index.ts';
import { runStudy, type Study } from '../../src/study/index.ts';
import { hillside, studyInputs } from '../helpers/hillside.ts';

const plane = localPlane({ lon: -128, lat: 44 });
const slope = { belowDeg: 24, lengthM: 40, aboveDeg: 20 };

/** A box of metres around the site, as an event's area. */
function box(west: number, south: number, east: number, north: number): EventRecord['area'] {
  const corners = [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ].map(([x, y]): [number, number] => {
    const { lon, lat } = plane.toLonLat({ x: x!, y: y! });
    return [lon, lat];
  });
  return { type: 'Polygon', coordinates: [corners] };
}

const event = (area: EventRecord['area'], on: string) => ({ id: 'e1', name: 'March slide', kind: 'slide', area, on });

function bookWith(events: readonly unknown[], signOffs: readonly unknown[] = []): Book {
  const sites = [{ id: 's1', name: 'Bend', place: { lon: -128, lat: 44, sideAzimuthDeg: 180 } }];
  return restoreBook({ schema: 'brinkbook/book@1', tables: { sites, events, signOffs } }, 'The book');
}

/** The site's study by a book; the hillside's heights are of 2023-06-01. */
function studyBy(book: Book, collectedOn: string | null = '2023-06-01'): Study {
  const inputs = studyInputs(hillside(slope));
  const layers = inputs.ground.layers.map((layer) => ({ ...layer, info: { ...layer.info, collectedOn } }));
  const found = runStudy({ ...inputs, ground: { ...inputs.ground, layers }, events: book.tables.events });
  if (!found.ok) throw found.error;
  return found.value;
}

const plain = studyBy(bookWith([]));
const around = box(-50, -50, 50, 50);

describe('an event in the book', () => {
  it('newer than the elevation makes the study screening only, and everything downstream with it', () => {
    expect(plain.terrain).toMatchObject({ screeningOnly: false, outdatedBy: null });
    expect(plain.angle!.planAs).toBe('low');
    expect(plain.layouts.length).toBeGreaterThan(0);
    const study = studyBy(bookWith([event(around, '2026-03-01')]));
    expect(study.terrain).toMatchObject({
      screeningOnly: true,
      outdatedBy: { name: 'March slide', on: '2026-03-01' },
    });
    expect(study.angle!.planAs).toBe('steep');
    expect(study.angle!.class).not.toBe('low');
    expect([study.spots, study.layouts]).toEqual([[], []]);
    expect(study.warnings.find(({ code }) => code === 'screening-only')!.text).toContain(
      'of 2023-06-01; March slide, 2026-03-01, changed the ground since',
    );
    expect(study.sentence).toContain('Screening only, the elevation is older than March slide, 2026-03-01');
  });

  it('older than the elevation changes nothing; on its very day, or with elevation of an unknown day, it counts', () => {
    expect(studyBy(bookWith([event(around, '2023-05-31')]))).toEqual(plain);
    expect(studyBy(bookWith([event(around, '2023-06-01')])).terrain.screeningOnly).toBe(true);
    expect(studyBy(bookWith([event(around, '2001-01-01')]), null).terrain.screeningOnly).toBe(true);
  });

  it('counts where only the descent runs into its area, not where it lies beside', () => {
    expect(studyBy(bookWith([event(box(-50, -60, 50, -25), '2026-03-01')])).terrain.screeningOnly).toBe(true);
    expect(studyBy(bookWith([event(box(40, -60, 90, 60), '2026-03-01')]))).toEqual(plain);
    expect(studyBy(bookWith([{ ...event(around, '2026-03-01'), deleted: true }]))).toEqual(plain);
  });

  it('heads the plan sheet with a stop until somebody was there after it', () => {
    const signed = (on: string, method: string) => [{ id: `c${on}`, siteId: 's1', by: 'R. Vale', on, method }];
    const sheet = (signOffs: readonly unknown[]) => {
      const book = bookWith([event(around, '2026-03-01')], signOffs);
      const { roads } = studyInputs(hillside(slope));
      return sheetOfBook(book, 's1', studyBy(book), { roads, today: '2026-05-01', address: null, photos: [] })!;
    };
    const before = sheet(signed('2026-02-28', 'walked'));
    expect(before.stops).toEqual(['March slide, 2026-03-01: nobody has been here since.']);
    const drawn = planPageSvg(before, { paper: 'letter', units: 'us' });
    expect(drawn).toContain('nobody has been here since');
    expect(sheet(signed('2026-04-01', 'desk')).stops).toEqual(before.stops);
    expect(sheet(signed('2026-04-01', 'walked')).stops).toEqual([
      'March slide, 2026-03-01: the elevation is older, screening only.',
    ]);
  });

  it('carries the address at which the book is published, unless another is asked for', () => {
    const book = bookWith([]);
    const published = readRecord(
      'settings',
      { id: SETTINGS_ID, publishedAddress: 'https://fire.example/book' } as { id: string },
      'x',
    );
    const sheet = (settings: (typeof published)[], address: string | null) => {
      const { roads } = studyInputs(hillside(slope));
      const request = { roads, today: '2026-05-01', address, photos: [] };
      return sheetOfBook({ ...book, tables: { ...book.tables, settings } }, 's1', studyBy(book), request)!;
    };
    expect(sheet([published], null).address).toBe('https://fire.example/book/');
    expect(sheet([published], 'https://other.example/').address).toBe('https://other.example/');
    expect(sheet([], null).address).toBeNull();
  });
});
