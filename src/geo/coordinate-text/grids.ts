import proj4 from 'proj4';
import { formatUsng, parseUsng } from '../texts/usng.ts';
import { isInsideBounds, middleOf } from './bounds.ts';
import type { Candidate, DistrictBounds, Fault } from './reading.ts';

const GRID =
  /(?<![A-Z\d.])(\d{1,2})(?:([C-HJ-NP-X])[ ,-]?| ([C-HJ-NP-X])[ ,-])([A-HJ-NP-Z]{2})(?:[ ,-]?(\d{1,5})[ ,-](\d{1,5})(?![\d.]|°)|[ ,-]?(\d{2,10})(?![\d.]|°)|(?= ?$))/g;
const NO_ZONE = /^\W*([A-HJ-NP-Z]{2})[ ,-]?(?:(\d{3,5})[ ,-](\d{3,5})|(\d{6}|\d{8}|\d{10}))\W*$/;
const UTM =
  /(?<![A-Z\d.])(\d{1,2}) ?([C-HJ-NP-X])[ ,]+(?:EASTING |E ?)?(\d{6}(?:\.\d+)?) ?M? ?E?[ ,;]+(?:NORTHING |N ?)?(\d{6,7}(?:\.\d+)?) ?M? ?N?(?![\d.])/g;

/** Digits of each number from which a grid reference counts inside a longer text: 2 name a square of 1 km. */
const TELLING_DIGITS = 2;

/**
 * Every US National Grid reference and UTM position in a tidy text, or what is wrong with it. A reference without its zone, as it is
 * said on a radio, is read where a district is known and it names a place inside.
 */
export function gridsIn(tidy: string, bounds: DistrictBounds | null): (Candidate | Fault)[] {
  const found = [...tidy.matchAll(GRID)].map((match) => usng(match, tidy));
  const short = found.length === 0 ? NO_ZONE.exec(tidy) : null;
  if (short) return [withoutZone(short, bounds)];
  return [...found, ...[...tidy.matchAll(UTM)].map((match) => utm(match, tidy))];
}

function usng(match: RegExpExecArray, tidy: string): Candidate | Fault {
  const [all, zone, tight, apart, square, east = '', north = '', joined = ''] = match;
  const band = tight ?? apart;
  const numbers = joined === '' ? [east, north] : halves(joined);
  if (numbers === null || numbers[0]!.length !== numbers[1]!.length) {
    return { fault: 'is no US National Grid reference: it needs as many digits east as north' };
  }
  const digits = numbers[0]!.length;
  if (digits === 0) return { fault: 'names a square of 100 km; its digits are missing' };
  const read = parseUsng(`${zone}${band} ${square} ${numbers[0]} ${numbers[1]}`);
  if (!read) return { fault: 'is no US National Grid reference: its zone and band have no such square' };
  const whole = isWhole(all, tidy);
  return { ...read, form: 'US National Grid', strong: digits >= TELLING_DIGITS, whole, doubt: null };
}

/** A square and its digits in the zone and band of the district's middle. */
function withoutZone(match: RegExpExecArray, bounds: DistrictBounds | null): Candidate | Fault {
  const [, square, east, north, joined] = match;
  const zone = bounds && formatUsng(middleOf(bounds), 1)?.split(' ')[0];
  const numbers = joined === undefined ? [east!, north!] : halves(joined)!;
  const read = zone && parseUsng(`${zone} ${square} ${numbers[0]} ${numbers[1]}`);
  if (!read || !isInsideBounds(read.position, bounds)) {
    return { fault: 'is a grid reference without its zone, which stands before it like 18S' };
  }
  return { ...read, form: 'US National Grid', strong: true, whole: true, doubt: null };
}

const halves = (digits: string): [string, string] | null =>
  digits.length % 2 === 1 ? null : [digits.slice(0, digits.length / 2), digits.slice(digits.length / 2)];

/**
 * Zone, latitude band, easting and northing in metres on WGS 84 [source: proj]. The band must hold the latitude: S is a band
 * in the north and also written for "south", so a reference whose band does not fit is refused.
 */
function utm(match: RegExpExecArray, tidy: string): Candidate | Fault {
  const [all, zone, band, easting, northing] = match;
  const south = band! < 'N' ? ' +south' : '';
  if (Number(zone) < 1 || Number(zone) > 60) return { fault: `has a UTM zone ${zone}; zones go from 1 to 60` };
  const system = `+proj=utm +zone=${Number(zone)}${south} +datum=WGS84 +units=m +no_defs`;
  const [lon, lat] = proj4(system, '+proj=longlat +datum=WGS84 +no_defs').forward([Number(easting), Number(northing)]);
  const name = Number.isFinite(lon) && Number.isFinite(lat) ? formatUsng({ lon, lat }, 1) : null;
  if (name?.split(' ')[0] !== `${Number(zone)}${band}`) {
    return { fault: `is no UTM position: zone ${Number(zone)}, band ${band} does not reach there` };
  }
  const decimals = Math.min(easting!.split('.')[1]?.length ?? 0, northing!.split('.')[1]?.length ?? 0);
  return {
    position: { lon, lat },
    withinM: 0.5 * 10 ** -decimals,
    form: 'UTM',
    strong: true,
    whole: isWhole(all, tidy),
    doubt: null,
  };
}

const isWhole = (found: string, tidy: string): boolean => !/[A-Z\d]/.test(tidy.replace(found, ''));
