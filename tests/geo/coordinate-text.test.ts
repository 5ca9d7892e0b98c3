import fc from 'fast-check';
import proj4 from 'proj4';
import { describe, expect, it } from 'vitest';
import {
  formatDecimalDegrees,
  formatDegreesMinutes,
  formatUsng,
  geodesicM,
  type LonLat,
  type PositionReading,
  parsePosition,
} from '../../src/geo/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const read = (text: string, bounds: Parameters<typeof parsePosition>[1] = {}): PositionReading => {
  const found = parsePosition(text, bounds);
  if (!found.ok) throw found.error;
  return found.value;
};
const refusal = (text: string): string => {
  const found = parsePosition(text);
  return found.ok ? `read as ${JSON.stringify(found.value)}` : found.error.message;
};

/** The place of the table, and the box around it that stands for the district. */
const lat = 44.0123;
const lon = -128.0456;
const district = { west: -128.2, south: 43.9, east: -127.8, north: 44.1 };

/** Forms of one place, without a question; the last column is half the last written digit in metres where it is checked. */
const forms: [string, number?][] = [
  // Decimal degrees.
  ['44.0123, -128.0456', 5.566],
  ['44.0123,-128.0456'],
  ['44.0123 -128.0456'],
  ['44.0123 −128.0456'],
  ['+44.0123 -128.0456'],
  ['44.0123-128.0456'],
  ['44.0123/-128.0456'],
  ['44.0123; -128.0456'],
  ['44.0123\t-128.0456'],
  ['44.0123\n-128.0456'],
  ['(44.0123, -128.0456)'],
  ['[44.0123, -128.0456]'],
  ['  44.01230 ,  -128.04560  ', 0.5566],
  ['44.0123°, -128.0456°'],
  ['４４.０１２３, -128.0456'],
  // Decimal commas.
  ['44,0123, -128,0456'],
  ['44,0123 -128,0456'],
  ['44,0123;-128,0456'],
  ['44,0123,-128,0456'],
  ['44,0123° N 128,0456° W'],
  // Letters before and after.
  ['44.0123N 128.0456W'],
  ['N44.0123 W128.0456'],
  ['N 44.0123, W 128.0456'],
  ['W128.0456, N44.0123'],
  ['128.0456° W; 44.0123° N'],
  ['44.0123 north, 128.0456 west'],
  ['n44.0123w128.0456'],
  ['44.0123N/128.0456W'],
  ['44.0123 N - 128.0456 W'],
  ['N44.0123 -128.0456'],
  // Headings.
  ['lat 44.0123 lon -128.0456'],
  ['Lat: 44.0123, Long: -128.0456'],
  ['LAT=44.0123&LON=-128.0456'],
  ['lon -128.0456 lat 44.0123'],
  ['Latitude 44.0123 N Longitude 128.0456 W'],
  ['Lat/Lon: 44.0123, -128.0456'],
  ['lon,lat\n-128.0456,44.0123'],
  ['{"lat":44.0123,"lng":-128.0456}'],
  ['{"longitude":"-128.0456","latitude":"44.0123"}'],
  ['GPS 44.0123 -128.0456 WGS84'],
  // Degrees and minutes.
  ['44° 0.738′ N, 128° 2.736′ W', 0.928],
  ["44 0.738' N 128 2.736' W"],
  ['n 44 0.738 w 128 2.736'],
  ['44 0.738 -128 2.736'],
  ['44 0.738, -128 2.736'],
  ['44°00.738’N 128°02.736’W'],
  ['44º 00,738´ N  128º 02,736´ W'],
  ['44 deg 0.738 min N, 128 deg 2.736 min W'],
  ['44-00.738N 128-02.736W'],
  ['N44-00.738 W128-02.736'],
  ['N44:00.738 W128:02.736'],
  ['4400.738N 12802.736W'],
  ['4400.738,N,12802.736,W'],
  ["44Â° 0.738' N, 128Â° 2.736' W"],
  ["44° 0.738', -128° 2.736'"],
  // Degrees, minutes and seconds.
  ['44°0\'44.28"N 128°2\'44.16"W', 0.155],
  ['44° 00′ 44.28″ N, 128° 02′ 44.16″ W'],
  ["44°00'44.28''N 128°02'44.16''W"],
  ['44d 0m 44.28s N, 128d 2m 44.16s W'],
  ['44 00 44.28 N 128 02 44.16 W'],
  ['44 00 44.28, -128 02 44.16'],
  ['N 44 00 44.28 W 128 02 44.16'],
  ['44:00:44.28N 128:02:44.16W'],
  ['44-00-44.28N, 128-02-44.16W'],
  ['440044.28N 1280244.16W'],
  ['44 degrees 0 minutes 44.28 seconds North, 128 degrees 2 minutes 44.16 seconds West'],
  ['\u200e44°00\'44.28"N\u202c 128°02\'44.16"W'],
  // Addresses and links.
  ['geo:44.0123,-128.0456', 5.566],
  ['geo:44.0123,-128.0456,310;u=35', 35],
  ['geo:44.0123,-128.0456;crs=wgs84'],
  ['geo:0,0?q=44.0123,-128.0456(Wreck)'],
  ['https://maps.example/?q=44.0123%2C-128.0456&z=17'],
  ['https://maps.example/#map=17/44.0123/-128.0456'],
  ['https://maps.example/@44.0123,-128.0456,17z'],
  ['https://district.example/call/#at=44.0123,-128.0456'],
  // Pasted messages.
  ['MVA OVER THE SIDE, LANTERN CREEK RD MM 5.2, 44.0123 -128.0456, 2 PTS, CALLBACK 555-0123 AT 18:05'],
  ['Inc 26-00417 2026-11-25 18:05:22 E5 T1 LR1 resp. N44.0123 W128.0456 acc 35m. Caller on scene'],
  ['18:05 44 00.738N 128 02.736W veh 200 ft down'],
  ['ENGINE 5 44 00.738N 128 02.736W'],
  ['RP STATES 3 PATIENTS 44°00\'44.28"N 128°02\'44.16"W, 12 MILES EAST'],
  [`Location: 44.0123, -128.0456 (US National Grid ${formatUsng({ lat, lon })})`],
  ['ALI LAT: +044.0123 LON: -128.0456 COP: 90 COF: 35'],
  ['PHASE 2 UNC 0035 X-128.0456 Y+44.0123 lat 44.0123 lon -128.0456'],
];

describe('positions in texts', () => {
  it('has a table of at least 60 forms', () => {
    expect(new Set(forms.map(([text]) => text)).size).toBeGreaterThanOrEqual(60);
  });

  it.each(forms)('reads %j', (text, withinM) => {
    const found = read(text, { bounds: district });
    expect(geodesicM(found.position, { lat, lon })).toBeLessThan(1);
    expect(found.question).toBeNull();
    if (withinM !== undefined) expect(found.withinM).toBeCloseTo(withinM, 2);
  });

  // Places whose references are published [source: usng-positions].
  it.each<[string, number, number, number]>([
    ['18S UJ 23486 06483', 38.8895, -77.0352, 0.5],
    ['18SUJ2348606483', 38.8895, -77.0352, 0.5],
    ['18s uj 23486 06483', 38.8895, -77.0352, 0.5],
    ['USNG: 18S UJ 2348 0648', 38.8895, -77.0352, 5],
    ['18S-UJ-2348-0648', 38.8895, -77.0352, 5],
    ['MGRS 18SUJ 234 064 near the obelisk, 3 pts', 38.8895, -77.0352, 50],
    ['12S VD 97871 76154', 35.028056, -111.023333, 0.5],
    ['31U DQ 48251 11932', 48.8582, 2.2945, 0.5],
  ])('reads the grid reference %j', (text, atLat, atLon, withinM) => {
    const found = read(text);
    expect(geodesicM(found.position, { lat: atLat, lon: atLon })).toBeLessThan(0.72 + withinM * 1.42);
    expect([found.form, found.withinM]).toEqual(['US National Grid', withinM]);
  });

  it('reads a grid reference without its zone inside a known district, and nowhere else', () => {
    const grid = formatUsng({ lat, lon }, 4)!;
    const short = grid.slice(grid.indexOf(' ') + 1);
    expect(geodesicM(read(short, { bounds: district }).position, { lat, lon })).toBeLessThan(7.1);
    expect(geodesicM(read(short.replaceAll(' ', ''), { bounds: district }).position, { lat, lon })).toBeLessThan(7.1);
    expect(refusal(short)).toMatch(/without its zone/);
    const elsewhere = parsePosition('UJ 2348 0648', { bounds: district });
    expect(elsewhere.ok ? 'read' : elsewhere.error.message).toMatch(/without its zone/);
  });

  it.each([
    ['18S 323486 4306483', '18S UJ 23486 06483'],
    ['18S 323486mE 4306483mN', '18S UJ 23486 06483'],
    ['UTM zone 18S, 323486.0 E, 4306483.0 N', '18S UJ 23486 06483'],
    ['34H 261878 6243186', '34H BH 61878 43186'],
  ])('reads the UTM position %j', (text, grid) => {
    const found = read(text);
    expect(found.form).toBe('UTM');
    expect(geodesicM(found.position, read(grid).position)).toBeLessThan(0.75);
  });

  it.each([
    ['', /not read as a position/],
    [
      'by the old mill',
      /^"by the old mill" is not read as a position; write it like 44\.0123, -128\.0456 or 44° 0\.738′ N, 128° 2\.736′ W or 18S UJ 23486 06483\.$/,
    ],
    ['44', /not read as a position/],
    ['1,2,3', /not read as a position/],
    ['MM 5.2 Lantern Creek Road', /not read as a position/],
    ['555-0123', /not read as a position/],
    ['2026-11-25 18:05:22', /not read as a position/],
    ['engine 5 with 4 people, 2 patients', /not read as a position/],
    ['1200 S 400 E', /not read as a position|not on the Earth/],
    ['44 60 N, 128 0 W', /60 or more minutes/],
    ['44° 0′ 60″ N, 128° 0′ 0″ W', /60 or more minutes or seconds/],
    ['44.5 30 N, 128 W', /not read as a position/],
    ['44.5 30 N 128.5 20 W', /nothing with the other/],
    ['44.0123, -128.0456 W', /nothing with the other/],
    ['N44 S128', /two latitudes|not on the Earth/],
    ['N44.0123 N43.9', /two latitudes/],
    ['44.0123 N, 128.0456', /nothing with the other/],
    ['-44.0123 N, 128.0456 W', /minus with N or E/],
    ['+44.0123 S, 128.0456 W', /plus with S or W/],
    ['lat 44.0123 W lon 128.0456 N', /does not fit its heading/],
    ['44.0123 - 128.0456', /dash that may be a minus/],
    ['95.1234, 200.5678', /not on the Earth/],
    ['N 91.5, W 128.0', /latitude of 91\.5000, which is not on the Earth/],
    ['18S UJ 234 06483', /as many digits east as north/],
    ['18S UJ 23486 0648', /as many digits east as north/],
    ['18S AJ 23486 06483', /no such square/],
    ['61S UJ 23486 06483', /no such square/],
    ['18S UJ', /square of 100 km/],
    ['UJ 23486 06483', /without its zone/],
    ['18T 323486 4306483', /band T does not reach there/],
    ['44.0123, -128.0456 NAD27', /NAD 27/],
    ['geo:44.0123,-128.0456;crs=epsg:27700', /coordinate system EPSG:27700/],
    ['192.168.44.12', /not read as a position/],
    ['44..0123, -128..0456', /not read as a position/],
    ['12 N Main St, apt 4', /not read as a position/],
    ['x'.repeat(20_001), /20001 characters/],
  ])('refuses %j', (text, words) => {
    expect(refusal(text)).toMatch(words);
  });
});

describe('UTM against proj4, another way to the same numbers [source: proj]', () => {
  it('is read within the metre over the zones of both hemispheres', () => {
    const random = seededRandom(12);
    let read = 0;
    for (let n = 0; n < 500; n++) {
      const zone = 1 + Math.floor(random.next() * 60);
      const at = { lon: zone * 6 - 183 + (random.next() - 0.5) * 5, lat: random.next() * 150 - 75 };
      const south = at.lat < 0 ? ' +south' : '';
      const [x, y] = proj4('+proj=longlat +datum=WGS84', `+proj=utm +zone=${zone}${south} +datum=WGS84`).forward([
        at.lon,
        at.lat,
      ]);
      const band = formatUsng(at, 1)!.split(' ')[0]!;
      if (Number.parseInt(band, 10) !== zone) continue; // Off Norway and in Svalbard zones are wider.
      const [east, north] = [Math.floor(x), Math.floor(y)];
      if (String(north).length < 6) continue;
      const found = parsePosition(`${band} ${east}mE ${north}mN`);
      expect(found.ok, `${band} ${east} ${north}`).toBe(true);
      if (found.ok) expect(geodesicM(found.value.position, at)).toBeLessThan(0.72);
      read++;
    }
    expect(read).toBeGreaterThan(400);
  });
});

describe('questions', () => {
  const ask = (text: string) => {
    const { position, question } = read(text, { bounds: district });
    return { position, code: question?.code ?? null, instead: question?.instead ?? null, sentence: question?.sentence };
  };
  const place = { lat, lon };

  it.each([
    ['-128.0456, 44.0123', 'swapped', null],
    ['128.0456, 44.0123', 'sign', place],
    ['44.0123, 128.0456', 'sign', place],
    ['44.0123 N, 128.0456 E', 'sign', place],
    ['-44.0123, -128.0456', 'sign', place],
    ['-44.0123, 128.0456', 'sign', place],
    ['lat -128.0456 lon 44.0123', null, null],
    ['45.9, -128.0456', 'outside', null],
    ['38.8895, -77.0352', 'outside', null],
    ['18S UJ 23486 06483', 'outside', null],
    ['0.0000, 0.0000', 'outside', null],
    ['44.01, -128.04', 'coarse', null],
    ['44, -128', 'coarse', null],
    ['44 0.7 N, 128 2.7 W', null, null],
    ['44.0123 N, -128.0456 W', 'sign', null],
    ['caller 44.0123 -128.0456 wreck 44.0234 -128.0456', 'several', { lat: 44.0234, lon }],
    ['44.0123 N 128.0456 W, then 44.0 N 127.9 W', 'several', { lat: 44, lon: -127.9 }],
    ['3.1234 44.0123 -128.0456', 'several', { lat: 3.1234, lon: 44.0123 }],
  ])('asks of %j: %s', (text, code, instead) => {
    if (text.startsWith('lat -128')) {
      expect(refusal(text)).toMatch(/latitude of 128\.0456, which is not on the Earth/);
      return;
    }
    const found = ask(text);
    expect(found.code).toBe(code);
    if (instead) expect(geodesicM(found.instead!, instead)).toBeLessThan(1);
    else expect(found.instead).toBeNull();
    if (code) expect(found.sentence).toMatch(/^[^\n]{20,240}\?$/);
  });

  it('finds a swap that is on the Earth, in a district where both are under 90', () => {
    const bounds = { west: -80.5, south: 37.5, east: -79.5, north: 38.5 };
    const { question, position } = read('-80.0456, 38.0123', { bounds });
    expect(question?.code).toBe('swapped');
    expect(position).toEqual({ lat: -80.0456, lon: 38.0123 });
    expect(question?.instead).toEqual({ lat: 38.0123, lon: -80.0456 });
    expect(read('38.0123, -80.0456', { bounds }).question).toBeNull();
  });

  it('asks about 0, 0 and a longitude written first also where no district is known', () => {
    expect(read('0.00000, 0.00000').question?.code).toBe('zero');
    expect(read('-128.0456, 44.0123').question?.code).toBe('swapped');
    expect(read('44.0123, -128.0456').question).toBeNull();
  });

  it('says how far outside a place is', () => {
    // From 44.1° N to 45.9° N along a meridian: 1.8 × 111.1 km = 200 km [source: derived].
    expect(ask('45.9000, -128.0456').sentence).toMatch(/about (200|201) km away/);
  });

  it('knows a district across the 180th meridian', () => {
    const bounds = { west: 179.5, south: 51, east: -179.5, north: 52 };
    expect(read('51.5000, 179.9000', { bounds }).question).toBeNull();
    expect(read('51.5000, -179.9000', { bounds }).question).toBeNull();
    expect(read('51.5000, 178.0000', { bounds }).question?.code).toBe('outside');
    expect(read('51.5000, -179.0000', { bounds }).question?.sentence).toMatch(/about 35 km away/);
  });
});

describe('positions there and back', () => {
  const anywhere = fc.record({
    lon: fc.double({ min: -179.9, max: 179.9, noNaN: true }),
    lat: fc.double({ min: -80, max: 83.99, noNaN: true }),
  });
  const close = (text: string, position: LonLat, m: number): void =>
    expect(geodesicM(read(text).position, position), text).toBeLessThan(m);

  it('come back within half a digit in every form written', () => {
    fc.assert(
      fc.property(anywhere, (position) => {
        close(formatDecimalDegrees(position), position, 0.8);
        close(formatDegreesMinutes(position), position, 1.4);
        close(formatUsng(position)!, position, 1.4);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('answer any text with a reading on the Earth or one sentence', () => {
    const piece = fc.constantFrom(
      ...[
        '44',
        '0',
        '128.05',
        '-',
        '+',
        '°',
        "'",
        '"',
        'N',
        'W',
        's',
        'E',
        ',',
        ' ',
        ':',
        '/',
        'lat',
        'lon',
        '18S',
        'UJ',
        '.',
        '\n',
        'geo:',
        '12345',
        'min',
      ],
    );
    let readings = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 60 }),
          fc.array(piece, { maxLength: 14 }).map((all) => all.join('')),
        ),
        (text) => {
          const found = parsePosition(text, { bounds: district });
          if (found.ok) {
            readings++;
            expect(Math.abs(found.value.position.lat)).toBeLessThanOrEqual(90);
            expect(Math.abs(found.value.position.lon)).toBeLessThanOrEqual(180);
            expect(found.value.withinM).toBeGreaterThan(0);
          } else expect(found.error.message).toMatch(/^.{20,}\.$/s);
        },
      ),
      { seed: 6, numRuns: 20_000 },
    );
    expect(readings).toBeGreaterThan(50);
  });
});
