import { type Book, restoreBook } from '../../src/book/index.ts';

/** Text that a careless export would let act: markup, script, a formula, right-to-left marks, quotes, XML and JSON ends. */
export const hostileTexts = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  ']]></name><script/>',
  '</style></title><svg onload=alert(1)>',
  '=HYPERLINK("http://example.test","click")',
  '+1+cmd|calc',
  '-2+3',
  '@SUM(A1)',
  '\t=1+1',
  '＝1+1',
  'abc\u202Egpj.exe',
  '\u2066left\u2069\u200F',
  'a,b;"c"\nd\r\ne',
  '__proto__',
  'javascript:alert(1)',
  '{{constructor.constructor("alert(1)")()}}',
  '&lt;b&gt; &amp; &#x3C;',
  'nul\u0000bell\u0007',
];

/** A one-pixel JPEG, PNG and WebP would do as photos; these are the first bytes that tell each kind, and a body. */
export const samplePhotos = {
  jpeg: new Uint8Array([0xff, 0xd8, 0xff, 0xdb, 0, 4, 1, 2, 0xff, 0xd9]),
  png: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 1, 2, 3, 4]),
};

/** A plain book with a record or more in most tables; `text` stands wherever somebody can write. */
export function sampleBook(text = 'a note', hashes: readonly string[] = []): Book {
  const short = text.slice(0, 200);
  const at = { lon: -128.01, lat: 44.001 };
  return restoreBook(
    {
      schema: 'brinkbook/book@1',
      tables: {
        settings: [{ id: 'book', district: short, bounds: { west: -128.1, south: 43.9, east: -127.9, north: 44.1 } }],
        sites: [
          {
            id: 's1',
            name: short,
            place: { ...at, sideAzimuthDeg: 166 },
            roadName: short,
            type: 'bend',
            notes: text,
            patientPoint: { lon: -128.0102, lat: 44.0004 },
            patients: 2,
            radio: short,
          },
          { id: 's2', name: 'Plain', place: { lon: -128.02, lat: 44.002, sideAzimuthDeg: 0 } },
          { id: 's3', name: 'Gone', place: { ...at, sideAzimuthDeg: 90 }, deleted: true },
        ],
        marks: [
          {
            id: 'm1',
            siteId: 's1',
            kind: 'tree',
            name: short,
            geometry: { type: 'Point', coordinates: [-128.011, 44.0012] },
            trunkDiameterM: 0.4,
            soundAtLook: true,
            notes: text,
          },
          {
            id: 'm2',
            siteId: 's1',
            kind: 'barrier',
            geometry: {
              type: 'LineString',
              coordinates: [
                [-128.01, 44],
                [-128.011, 44.001],
              ],
            },
          },
          {
            id: 'm3',
            kind: 'soft ground',
            geometry: {
              type: 'Polygon',
              coordinates: [
                [
                  [-128, 44],
                  [-128.001, 44],
                  [-128.001, 44.001],
                  [-128, 44],
                ],
              ],
            },
          },
        ],
        measurements: [
          {
            id: 'r1',
            siteId: 's1',
            reading: { quantity: 'angleDeg', value: 33 },
            by: short,
            on: '2026-05-01',
            notes: text,
          },
        ],
        signOffs: [
          { id: 'c1', siteId: 's1', by: short, role: 'captain', on: '2026-05-02', method: 'walked', conditions: short },
        ],
        photos: hashes.map((hash, i) => ({
          id: `p${i + 1}`,
          siteId: 's1',
          hash,
          type: i === 0 ? 'image/jpeg' : 'image/png',
          widthPx: 10,
          heightPx: 10,
          sizeBytes: 10,
          caption: short,
          showsPatient: i === 1,
        })),
        events: [
          {
            id: 'e1',
            name: short,
            kind: 'slide',
            on: '2026-02-01',
            area: {
              type: 'Polygon',
              coordinates: [
                [
                  [-128, 44],
                  [-128.01, 44],
                  [-128.01, 44.01],
                  [-128, 44],
                ],
              ],
            },
          },
        ],
        stations: [{ id: 'st1', name: short, at: { lon: -128.03, lat: 44.01 }, phone: '555-0100' }],
        routes: [{ id: 'rt1', name: short }],
        mileMarkers: [{ id: 'mm1', routeId: 'rt1', post: { mile: 5.5, at } }],
        supportPlaces: [{ id: 'lz1', siteId: 's1', kind: 'landing zone', name: short, at, vehicles: 2, notes: text }],
        crashes: [{ id: 'k1', on: '2020-01-02', at, severity: 'serious' }],
      },
    },
    'the sample book',
  );
}
