import { type Random, seededRandom } from '../../src/units/index.ts';
import type { KeyRoad } from '../key/write-key.ts';
import { lonLat } from '../position.ts';
import { seed } from '../recipe.ts';

const FIRST_YEAR = 2014;
const YEARS = 10;
/** Crashes a year per kilometre, by road. */
const rates: Readonly<Record<string, number>> = { lantern: 1.1, cinder: 0.7, quarry: 0.3 };

/** Ten years of invented crashes as CSV: more on bends, half run off the road, some with coordinates that a clerk made up. */
export function makeCrashes(key: readonly KeyRoad[]): string {
  const random = seededRandom(seed + 500);
  const rows: string[][] = [];
  for (const road of key) {
    const x = road.columns.x as number[];
    const y = road.columns.y as number[];
    const count = Math.round((rates[road.key] * YEARS * x.length) / 1000);
    for (let n = 0; n < count; n++) rows.push(crash(road, pickOnBend(x, y, random), random));
  }
  for (const bad of ['77.7777', '88.8888', '99.9999']) {
    rows.push([
      '2019-03-11',
      '07:40',
      bad,
      `-${bad}`,
      'Lantern Creek Road',
      '',
      'property damage',
      'unknown',
      'daylight',
      'wet',
      '1',
    ]);
  }
  rows.sort((a, b) => (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0));
  const head = 'id,date,time,lat,lon,road,station_m,severity,run_off_road,light,surface,vehicles';
  return `${[head, ...rows.map((row, k) => [`C${1001 + k}`, ...row].join(','))].join('\n')}\n`;
}

function crash(road: KeyRoad, i: number, random: Random): string[] {
  const pick = (options: readonly [string, number][]) => {
    let at = random.next();
    for (const [word, share] of options) {
      at -= share;
      if (at < 0) return word;
    }
    return options[options.length - 1][0];
  };
  const two = (value: number) => String(value).padStart(2, '0');
  const year = FIRST_YEAR + Math.floor(random.next() * YEARS);
  const date = `${year}-${two(1 + Math.floor(random.next() * 12))}-${two(1 + Math.floor(random.next() * 28))}`;
  const time = `${two(Math.floor(random.next() * 24))}:${two(Math.floor(random.next() * 60))}`;
  const x = road.columns.x[i] as number;
  const y = road.columns.y[i] as number;
  const [lon, lat] = lonLat(x + 6 * random.normal(), y + 6 * random.normal());
  return [
    date,
    time,
    lat.toFixed(6),
    lon.toFixed(6),
    road.name,
    String(Math.round(road.columns.stationM[i] as number)),
    pick([
      ['property damage', 0.62],
      ['injury', 0.3],
      ['serious injury', 0.06],
      ['fatal', 0.02],
    ]),
    pick([
      ['yes', 0.52],
      ['no', 0.48],
    ]),
    pick([
      ['daylight', 0.6],
      ['dark', 0.34],
      ['dusk', 0.06],
    ]),
    pick([
      ['dry', 0.62],
      ['wet', 0.3],
      ['ice', 0.08],
    ]),
    pick([
      ['1', 0.7],
      ['2', 0.28],
      ['3', 0.02],
    ]),
  ];
}

/** A station, the likelier the tighter the bend. */
function pickOnBend(x: readonly number[], y: readonly number[], random: Random): number {
  for (;;) {
    const i = 20 + Math.floor(random.next() * (x.length - 40));
    const before = Math.atan2(y[i] - y[i - 15], x[i] - x[i - 15]);
    const after = Math.atan2(y[i + 15] - y[i], x[i + 15] - x[i]);
    const turn = Math.abs(((after - before + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
    if (random.next() < 0.15 + turn) return i;
  }
}
