import { UserError, type VerticalUnit } from '../../units/index.ts';

/** Where a raster may state the unit of its heights. */
export interface VerticalStatements {
  /** VerticalUnitsGeoKey, an EPSG unit code, or null. */
  readonly unitCode: number | null;
  /** Unit of the vertical CRS that the file names, or null. */
  readonly ofVerticalCrs: VerticalUnit | null;
  /** Unit in the words of the GDAL metadata, or null. */
  readonly unitType: string | null;
  /** True where the horizontal CRS is in feet of either kind. */
  readonly horizontalInFeet: boolean;
}

/** Codes of the EPSG table of units. [source: epsg] */
const byCode: Readonly<Record<number, VerticalUnit>> = { 9001: 'm', 9002: 'ft', 9003: 'us-ft' };

const byWord: Readonly<Record<string, VerticalUnit>> = {
  m: 'm',
  meter: 'm',
  meters: 'm',
  metre: 'm',
  metres: 'm',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  'international foot': 'ft',
  ftus: 'us-ft',
  'us-ft': 'us-ft',
  'us survey foot': 'us-ft',
  'us survey feet': 'us-ft',
};

const words: Readonly<Record<VerticalUnit, string>> = { m: 'metres', ft: 'feet', 'us-ft': 'US survey feet' };

/**
 * The unit of a raster's heights. What the file says counts; `option` fills in what it does not say. Metres are taken, and
 * told to be taken, where nobody says and the horizontal CRS is not in feet; under one in feet both happen, so that
 * `UserError` asks. So it does where statements contradict each other or name another unit.
 */
export function verticalUnit(
  stated: VerticalStatements,
  option: VerticalUnit | undefined,
  source: string,
): { unit: VerticalUnit; assumed: boolean } {
  const found = new Set<VerticalUnit>();
  const unknown: string[] = [];
  const { unitCode, unitType } = stated;
  if (unitCode !== null) {
    const unit = byCode[unitCode];
    if (unit) found.add(unit);
    else unknown.push(`EPSG unit ${unitCode}`);
  }
  if (stated.ofVerticalCrs) found.add(stated.ofVerticalCrs);
  const word = unitType?.trim().toLowerCase();
  if (word && word !== 'unknown') {
    const unit = byWord[word];
    if (unit) found.add(unit);
    else unknown.push(`"${unitType}"`);
  }
  const named = [...found].map((unit) => words[unit]);
  if (option !== undefined) {
    if (found.size > 0 && !found.has(option)) {
      throw new UserError(
        'unit-contradiction',
        `${source} states heights in ${named.join(' and ')}, but ${words[option]} were given (${option}); leave the vertical unit out or correct the file.`,
      );
    }
    return { unit: option, assumed: false };
  }
  if (found.size > 1) {
    throw new UserError(
      'unit-contradiction',
      `${source} states heights in ${named.join(' and in ')}; say which it is with --vertical-unit m, ft or us-ft.`,
    );
  }
  const [unit] = found;
  if (unit) return { unit, assumed: false };
  if (unknown.length > 0) {
    throw new UserError(
      'unit-unknown',
      `${source} states its heights in ${unknown.join(' and ')}, which is not known here; give --vertical-unit m, ft or us-ft, or convert the file.`,
    );
  }
  if (stated.horizontalInFeet) {
    throw new UserError(
      'unit-missing',
      `${source} does not say whether its heights are metres or feet, and its map coordinates are in feet; give --vertical-unit m, ft or us-ft.`,
    );
  }
  return { unit: 'm', assumed: true };
}
