import { UserError } from '../../units/index.ts';
import type { Crs, VerticalCrs } from './crs.ts';

/** Two systems are the same where they put a place this near, metres. */
const SAME_M = 0.01;
const METRES_PER_DEGREE = 111_320;

/**
 * The system of a raster from what its file states and what the user gave. What the user gives fills in what the file does
 * not say; the same twice is fine. `at` is a point of the raster in its own coordinates. Throws `UserError` where both
 * differ, naming both, and where neither names a system.
 */
export function agreedCrs(
  ofFile: Crs | null,
  given: Crs | null,
  at: { readonly x: number; readonly y: number },
  source: string,
): Crs {
  if (!ofFile && !given) {
    throw new UserError(
      'crs-missing',
      `${source} does not say in which coordinate reference system it is; give it with --crs EPSG:N.`,
    );
  }
  const crs = ofFile ?? given!;
  if (ofFile && given && !isSame(ofFile, given, at)) throw contradiction(ofFile.text, given.text, source);
  const vertical = agreedVertical(ofFile?.vertical ?? null, given?.vertical ?? null, source);
  const [lon, lat] = crs.toLonLat(at.x, at.y);
  if (!(Math.abs(lon) <= 360 && Math.abs(lat) <= 90)) {
    throw new UserError(
      'crs-place',
      `${source} lies at ${at.x}, ${at.y}, which is outside where ${crs.text} is defined; give the right system with --crs or correct the file.`,
    );
  }
  return { ...crs, vertical };
}

function isSame(a: Crs, b: Crs, { x, y }: { x: number; y: number }): boolean {
  if ((a.unitM === null) !== (b.unitM === null)) return false;
  if (a.unitM !== null && b.unitM !== null && Math.abs(a.unitM / b.unitM - 1) > 1e-9) return false;
  const [lonA, latA] = a.toLonLat(x, y);
  const [lonB, latB] = b.toLonLat(x, y);
  return Math.hypot(lonA - lonB, latA - latB) * METRES_PER_DEGREE < SAME_M;
}

function agreedVertical(ofFile: VerticalCrs | null, given: VerticalCrs | null, source: string): VerticalCrs | null {
  if (!ofFile || !given) return ofFile ?? given;
  const clash = (a: string | null, b: string | null): boolean => a !== null && b !== null && a !== b;
  if (clash(ofFile.unit, given.unit) || clash(ofFile.datum, given.datum)) {
    const words = ({ datum, unit }: VerticalCrs): string => `heights in ${datum ?? unit}`;
    throw contradiction(words(ofFile), words(given), source);
  }
  return { unit: ofFile.unit ?? given.unit, datum: ofFile.datum ?? given.datum };
}

const contradiction = (ofFile: string, given: string, source: string): UserError =>
  new UserError(
    'crs-contradiction',
    `${source} states ${ofFile}, but ${given} was given; leave --crs out or correct the file.`,
  );
