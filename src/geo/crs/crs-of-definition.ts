import proj4 from 'proj4';
import { UserError } from '../../units/index.ts';
import type { Crs, VerticalCrs } from './crs.ts';
import { makeCrs } from './make-crs.ts';

/** Semi-major axis in metres and inverse flattening of GRS 80 (and, to 0.1 mm, WGS 84), the ellipsoid of Earth-centred datums. */
const EARTH_CENTRED = { a: 6378137, rf: 298.257222101 };

/** What the projection library makes of a definition, as far as it is read here. */
interface Read {
  readonly projName?: string;
  readonly to_meter?: number;
  readonly a: number;
  readonly b: number;
  readonly axis?: string;
  readonly datum_params?: readonly (string | number)[];
  readonly nadgrids?: string;
  readonly from_greenwich?: number;
}

/**
 * A system defined by a "+proj=" text or by WKT, for files and options that name no EPSG code. Throws `UserError` where the
 * definition cannot be read, its datum has no known way to WGS 84, or its axes do not point east and north.
 */
export function crsOfDefinition(definition: string, text: string, vertical: VerticalCrs | null, source: string): Crs {
  const whole = withDefaults(definition);
  const read = parse(whole, source);
  if (!read.projName || read.projName === 'geocent') {
    throw new UserError(
      'crs-refused',
      `${source} defines coordinates that are neither degrees nor on a plane; convert the raster with "gdalwarp -t_srs".`,
    );
  }
  if (read.axis && read.axis !== 'enu') {
    throw new UserError(
      'crs-refused',
      `${source} defines coordinates whose axes do not point east and north (${read.axis}); convert the raster with "gdalwarp -t_srs".`,
    );
  }
  if (!shiftIsKnown(read, definition)) {
    throw new UserError(
      'crs-shift',
      `${source} defines coordinates on a datum whose shift to WGS 84 is not given; convert the raster with "gdalwarp -t_srs" to a system on WGS 84, or give one with --crs.`,
    );
  }
  const degrees = /^(longlat|identity)$/i.test(read.projName);
  return makeCrs(whole, { text, unitM: degrees ? null : (read.to_meter ?? 1), shiftAccuracyM: null, vertical });
}

/** A "+proj=" text with the zeros that it may leave out; the projection library takes them for not-a-number. */
function withDefaults(definition: string): string {
  if (!/\+proj=(?!longlat|latlong|utm)/.test(definition)) return definition;
  return ['lat_0', 'lon_0', 'x_0', 'y_0']
    .filter((key) => !definition.includes(`+${key}=`))
    .reduce((text, key) => `${text} +${key}=0`, definition);
}

function parse(definition: string, source: string): Read {
  try {
    return new proj4.Proj(definition) as unknown as Read;
  } catch {
    throw new UserError(
      'crs-unreadable',
      `${source} defines a coordinate reference system that cannot be read here; convert the raster with "gdalwarp -t_srs" to one with an EPSG code.`,
    );
  }
}

function shiftIsKnown({ a, b, datum_params, nadgrids }: Read, definition: string): boolean {
  if (nadgrids && !/^@?null$/.test(nadgrids)) return false;
  if (datum_params && datum_params.length >= 3) return true;
  if (nadgrids || /\+a=6378137 \+b=6378137\b/.test(definition)) return true;
  return Math.abs(a - EARTH_CENTRED.a) < 0.01 && Math.abs(a / (a - b) - EARTH_CENTRED.rf) < 1e-3;
}
