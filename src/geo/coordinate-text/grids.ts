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
 * Zone, latitude band, easting and northing in metres, read by the metre square of the grid that they fall in: the grid is UTM with
 * letters for the squares of 100 km [source: fgdc-usng]. The band must hold the latitude: S is a band in the north and also
 * written for "south", so a reference whose band does not fit is refused.
 */
function utm(match: RegExpExecArray, tidy: string): Candidate | Fault {
  const [all, zone, band, easting, northing] = match;
  const number = Number(zone);
  if (number < 1 || number > 60) return { fault: `has a UTM zone ${zone}; zones go from 1 to 60` };
  const [east, north] = [Math.floor(Number(easting)), Math.floor(Number(northing))];
  const column = COLUMNS[(number - 1) % 3]![Math.floor(east / 1e5) - 1];
  const row = ROWS[(Math.floor(north / 1e5) + (number % 2 === 0 ? 5 : 0)) % 20]!;
  const rest = (metres: number): string => String(metres % 1e5).padStart(5, '0');
  const read = column && parseUsng(`${number}${band} ${column}${row} ${rest(east)} ${rest(north)}`);
  if (!read) return { fault: `is no UTM position: zone ${number}, band ${band} does not reach there` };
  return { ...read, form: 'UTM', strong: true, whole: isWhole(all, tidy), doubt: null };
}

/** Letters of the squares of 100 km: columns by zone in sets of three, rows in turns of 20, begun at F in even zones. */
const COLUMNS = ['ABCDEFGH', 'JKLMNPQR', 'STUVWXYZ'] as const;
const ROWS = 'ABCDEFGHJKLMNPQRSTUV';

const isWhole = (found: string, tidy: string): boolean => !/[A-Z\d]/.test(tidy.replace(found, ''));
