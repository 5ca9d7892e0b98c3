// What two development libraries offer as the definition of a coordinate reference system; used by the two scripts that
// make the table of the systems that the program knows.
import datums from 'proj4/lib/constants/Datum.js';

/** Codes from here on are not EPSG's: other registries are filed there. */
const FOREIGN_FROM = 50_000;

const GRID = /\+nadgrids=(?!@null)("[^"]*"|\S+)/;
const EARTH_CENTRED = /\+(ellps|datum)=(GRS80|WGS84)\b|\+nadgrids=@null/;
const SHIFT = /\+towgs84=\S+/;
const NO_SHIFT = /\+towgs84=0,0,0(,0,0,0,0)?(?=\s|$)/;
/** Shift, turn and scale of a seven-number shift. */
const TURN = /(\+towgs84=[^,\s]+,[^,\s]+,[^,\s]+,)([^,\s]+,[^,\s]+,[^,\s]+)(,[^,\s]+)/;

/** True for the rows of epsg-index that place a point on the Earth, in degrees or in a plane. */
export const isHorizontal = ({ code, kind }) =>
  Number(code) < FOREIGN_FROM && /^CRS-(PROJCRS|GEOGCRS|GEOG3DCRS)$/.test(kind);

/**
 * Definitions of one system by name of their source, best first, each with a way to WGS 84 and without a grid file: `index`
 * (epsg-index), `list` (proj4-list), `flipped` (epsg-index with its turn taken the other way round, as two conventions have
 * it) and `none` (no shift, where the ellipsoid is one of Earth-centred datums).
 */
export function candidates({ code, proj4: own }, list) {
  const other = list[`EPSG:${code}`]?.[1];
  const found = {};
  const offer = (name, text) => {
    if (text && hasShift(text)) found[name] = shorten(text);
  };
  const index = own?.replace(SHIFT, inSeconds);
  offer('index', index);
  offer('list', other && datumWrittenOut(other));
  if (index && TURN.test(index))
    offer(
      'flipped',
      index.replace(TURN, (_, shift, turn, scale) => shift + negated(turn) + scale),
    );
  const bare = [own, other].find((text) => text && EARTH_CENTRED.test(text));
  if (bare && SHIFT.test(found.index ?? found.list ?? '')) offer('none', bare.replace(SHIFT, ''));
  return found;
}

/** True where a definition says how to come to WGS 84, or stands on an ellipsoid that only Earth-centred datums use. */
const hasShift = (text) => !GRID.test(text) && (SHIFT.test(text) || EARTH_CENTRED.test(text));

/** epsg-index gives the turn of one frame in radians, where arc-seconds are meant. */
function inSeconds(shift) {
  if (!/e-0[5-9]/.test(shift)) return shift;
  const numbers = shift.replace('+towgs84=', '').split(',').map(Number);
  const seconds = (radians) => ((radians * 180 * 3600) / Math.PI).toFixed(6);
  return `+towgs84=${numbers.map((value, i) => (i > 2 && i < 6 ? seconds(value) : value)).join(',')}`;
}

const negated = (turn) =>
  turn
    .split(',')
    .map((angle) => (Number(angle) === 0 ? angle : String(-Number(angle))))
    .join(',');

/** A datum by name as ellipsoid and shift, where those stand in for its grid file. */
function datumWrittenOut(text) {
  const known = datums[/\+datum=(\S+)/.exec(text)?.[1].toLowerCase()];
  if (!known?.towgs84) return text;
  return text
    .replace(GRID, '')
    .replace(SHIFT, '')
    .replace(/\+datum=\S+/, `+ellps=${known.ellipse} +towgs84=${known.towgs84}`);
}

const shorten = (text) =>
  text
    .replace(/\+(no_defs|type=crs|wktext|vunits=\S+|geoidgrids=\S+)(?=\s|$)/g, '')
    .replace(NO_SHIFT, '')
    .replace(/\s+/g, ' ')
    .trim();
