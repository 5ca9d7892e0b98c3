import { describe, expect, test } from 'vitest';
import { emptyBook, readRecord } from '../../../src/book/index.ts';
import { withoutStudy } from '../../../src/ui/call/plan/without-study.ts';
import { manySites } from './sites.ts';

const [site] = manySites(1);

describe('a site without a study', () => {
  test('tells where it is and calls everybody whom the table might ask for, each once', () => {
    const found = withoutStudy(null, site!, 'us');
    expect(found.position[0]).toMatch(/^\d+° \d+\.\d{3}′ N, \d+° \d+\.\d{3}′ W$/);
    expect(found.geo).toBe(`geo:${site!.lat.toFixed(6)},${site!.lon.toFixed(6)}`);
    // The shipped table has six rows for five: what is not known calls as if it held.
    expect(found.calls.map(({ who }) => who)).toEqual([
      'Technical rope team',
      'Mutual aid',
      'Water rescue team',
      'Power company',
      'Police or road department',
    ]);
    expect(found.calls[0]!.why).toBe('if planned as high angle, if rope does not reach');
  });

  test('has the book’s places, notes, checks and what changed since', () => {
    const book = emptyBook();
    const own = readRecord(
      'sites',
      {
        id: site!.id,
        name: site!.name,
        place: { lon: site!.lon, lat: site!.lat, sideAzimuthDeg: 90 },
        notes: ' loose ',
        radio: '3',
      },
      'this test',
    );
    const place = readRecord(
      'supportPlaces',
      { id: 'p', siteId: site!.id, kind: 'staging', name: 'Barn', at: { lon: site!.lon + 0.01, lat: site!.lat } },
      'this test',
    );
    const event = readRecord(
      'events',
      {
        ...{ id: 'e', kind: 'flood', name: 'Flood', on: '2026-03-01' },
        area: { type: 'Polygon', coordinates: [ring(site!.lon, site!.lat)] },
      },
      'this test',
    );
    const whole = { ...book, tables: { ...book.tables, sites: [own], supportPlaces: [place], events: [event] } };
    const found = withoutStudy(whole, site!, 'metric');
    expect(found).toMatchObject({ radio: '3', notes: 'loose' });
    expect(found.places).toEqual([expect.stringMatching(/^Staging Barn, \d+ m east in a straight line: .*\.$/)]);
    expect(found.stops).toEqual([expect.stringContaining('Flood, 2026-03-01')]);
    // A place of another site is none of this one's.
    const other = { ...whole, tables: { ...whole.tables, supportPlaces: [{ ...place, siteId: 'other' }] } };
    expect(withoutStudy(other, site!, 'us').places).toEqual([]);
  });
});

function ring(lon: number, lat: number): [number, number][] {
  const d = 0.01;
  const corners: [number, number][] = [
    [lon - d, lat - d],
    [lon + d, lat - d],
    [lon + d, lat + d],
    [lon - d, lat + d],
  ];
  return [...corners, corners[0]!];
}
