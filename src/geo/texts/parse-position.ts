import { ok, type Result, refuse, UserError } from '../../units/index.ts';
import type { LonLat } from '../types.ts';
import { looksLikeUsng, parseUsng } from './usng.ts';

/** A position as somebody wrote it, and how finely: half the last written digit, metres. */
export interface WrittenPosition {
  readonly position: LonLat;
  readonly withinM: number;
}

const METRES_PER_DEGREE = 111_320;

/**
 * Reads a position in any usual form: decimal degrees, degrees and decimal minutes, degrees, minutes and seconds, with signs
 * or with N, S, E, W in either order; without letters latitude comes first. Or a US National Grid reference. A refusal says
 * what was expected.
 */
export function parsePosition(text: string): Result<WrittenPosition> {
  if (looksLikeUsng(text)) {
    const found = parseUsng(text);
    return found
      ? ok(found)
      : refuse(
          new UserError(
            'position-grid',
            `"${text}" is not a US National Grid reference; write it like 18S UJ 23486 06483, with as many digits east as north.`,
          ),
        );
  }
  const halves = split(text);
  const one = halves && ordinate(halves[0]);
  const two = halves && ordinate(halves[1]);
  if (!one || !two || (one.axis !== null && one.axis === two.axis)) return refuse(unread(text));
  const swapped = one.axis === 'lon' || two.axis === 'lat';
  const [lat, lon] = swapped ? [two, one] : [one, two];
  if (Math.abs(lat.degrees) > 90 || Math.abs(lon.degrees) > 180) {
    const why = Math.abs(lat.degrees) > 90 && one.axis === null ? '; latitude comes first' : '';
    return refuse(
      new UserError(
        'position-range',
        `"${text}" is not on the Earth: latitude goes to 90° and longitude to 180°${why}.`,
      ),
    );
  }
  return ok({
    position: { lon: lon.degrees, lat: lat.degrees },
    withinM: 0.5 * Math.max(lat.step, lon.step) * METRES_PER_DEGREE,
  });
}

const unread = (text: string): UserError =>
  new UserError(
    'position-unread',
    `"${text}" is not read as a position; write it like 44.0123, -128.0456 or 44° 0.738′ N, 128° 2.736′ W or 18S UJ 23486 06483.`,
  );

interface Ordinate {
  readonly degrees: number;
  /** The last written digit, degrees. */
  readonly step: number;
  readonly axis: 'lat' | 'lon' | null;
}

/** The two halves of a text: at a comma or semicolon, at the letters, or in the middle of its numbers. */
function split(text: string): [string, string] | null {
  const marks = text.split(/[,;]/);
  if (marks.length === 2) return [marks[0], marks[1]];
  if (marks.length > 2) return null;
  const behind = /^(.*?\d[^NSEW]*[NSEW])(.*\d.*)$/i.exec(text);
  const before = /^(\s*[NSEW].*?)([NSEW].*)$/i.exec(text);
  if (before) return [before[1], before[2]];
  if (behind) return [behind[1], behind[2]];
  const numbers = [...text.matchAll(/[+\-−]?\d+(?:\.\d+)?/g)];
  if (numbers.length % 2 === 1 || numbers.length === 0) return null;
  const at = numbers[numbers.length / 2].index;
  return [text.slice(0, at), text.slice(at)];
}

const form =
  /^\s*([NSEW])?\s*([+\-−])?\s*(\d+(?:\.\d+)?)\s*(?:°|º|d|deg)?\s*(?:(\d+(?:\.\d+)?)\s*(?:'|′|’|m|min)?\s*(?:(\d+(?:\.\d+)?)\s*(?:"|″|”|''|s|sec)?)?)?\s*([NSEW])?\s*$/i;

/** One number of a position, or null: degrees, and below the last fraction only whole numbers under 60. */
function ordinate(text: string): Ordinate | null {
  const match = form.exec(text);
  if (!match) return null;
  const [, before, sign, degrees, minutes, seconds, behind] = match;
  const letter = (before ?? behind)?.toUpperCase();
  if ((before && behind) || (letter && sign)) return null;
  const parts = [degrees, minutes, seconds].filter((part) => part !== undefined);
  if (parts.slice(0, -1).some((part) => part.includes('.')) || parts.slice(1).some((part) => Number(part) >= 60))
    return null;
  const value = parts.reduce((sum, part, i) => sum + Number(part) / 60 ** i, 0);
  const last = parts[parts.length - 1];
  const step = 10 ** -(last.split('.')[1]?.length ?? 0) / 60 ** (parts.length - 1);
  const negative = sign === '-' || sign === '−' || letter === 'S' || letter === 'W';
  const axis = letter === undefined ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lon';
  return { degrees: negative ? -value : value, step, axis };
}
