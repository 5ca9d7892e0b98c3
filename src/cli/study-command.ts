import { readFile, writeFile } from 'node:fs/promises';
import {
  type AngleRule,
  angleRuleOf,
  angleRules,
  type Book,
  defaultAngleRule,
  live,
  type Mark,
  marksOf,
  settingsOf,
  worseOfContested,
} from '../book/index.ts';
import { type LonLat, localPlane } from '../geo/index.ts';
import {
  type ElevationOptions,
  type ElevationSource,
  openElevation,
  readBook,
  readMarks,
  readRoads,
  studySite,
} from '../io/index.ts';
import { fileSource, inflateNatively } from '../io/node/index.ts';
import { urlSource } from '../io/web/index.ts';
import { studySvg } from '../plan/index.ts';
import { indexRoads, roadAt } from '../road/index.ts';
import { fieldOfBook, resourcesOfBook, shippedResources } from '../study/index.ts';
import { toRadians, UserError } from '../units/index.ts';
import { readDay, readOptions, readPosition, readPositive, readWord, UsageError } from './arguments.ts';
import { readConditions } from './conditions.ts';
import { studyReport } from './report/index.ts';

export const studyHelp = `study: the workup of one roadside place

  npm run -s brinkbook -- study --elevation FILE|URL --roads FILE --at LON,LAT [options]

  --elevation FILE|URL    elevation raster (GeoTIFF); several may be given, the finest is used where it has data
  --roads FILE            roads as GeoJSON or Overpass JSON; may also hold water, wires, barriers, walls, cliffs
  --at LON,LAT            a point beside a road, WGS 84 degrees, longitude first
  --side left|right       side of the road as drawn; without it, the side that drops
  --patient LON,LAT       where the patient is taken to be
  --marks FILE            marks as a GeoJSON FeatureCollection with a "kind" property
  --book FILE             fleet, kit, arrivals, rates, calls, marks, events, rule and units of a book, readings
                          and sign-offs of its site there; without it the shipped ones
  --rule NAME             angle rule: ${angleRules.map((rule) => rule.name).join(', ')} (default ${defaultAngleRule.name})
  --crs EPSG:N            coordinate system, where the raster does not say
  --vertical-unit UNIT    m, ft or us-ft, where the raster does not say
  --terrain-kind KIND     bare-earth or surface, where the raster does not say
  --vertical-rmse METRES  vertical accuracy, one sigma
  --collected-on DATE     day of collection, 2024-05-31, where the raster does not say
  --conditions LIST       wet, ice, night, wind, separated by commas: longer, heavier, farther from the edge
  --patients N            patients, raised one after another (default 1)
  --units us|metric       feet (default) or metres in texts and drawings
  --svg FILE              also draws it: plan view and true-scale profile
  --json                  prints the study as JSON
`;

const options = {
  elevation: { type: 'string', multiple: true },
  roads: { type: 'string' },
  at: { type: 'string' },
  side: { type: 'string' },
  patient: { type: 'string' },
  marks: { type: 'string' },
  book: { type: 'string' },
  rule: { type: 'string' },
  crs: { type: 'string' },
  'vertical-unit': { type: 'string' },
  'terrain-kind': { type: 'string' },
  'vertical-rmse': { type: 'string' },
  'collected-on': { type: 'string' },
  conditions: { type: 'string' },
  patients: { type: 'string' },
  units: { type: 'string' },
  svg: { type: 'string' },
  json: { type: 'boolean' },
} as const;

/** Runs `study`: prints the study, draws it; throws `UsageError` or `UserError`. */
export async function studyCommand(args: string[]): Promise<void> {
  const given = readOptions(args, options);
  const elevation = needed('--elevation', given.elevation);
  const roadsFile = needed('--roads', given.roads);
  const at = readPosition('--at', needed('--at', given.at));
  const side = readWord('--side', given.side, ['left', 'right'] as const) ?? null;
  const patient = given.patient === undefined ? null : readPosition('--patient', given.patient);
  const namedRule = ruleNamed(given.rule);
  const namedUnits = readWord('--units', given.units, ['us', 'metric'] as const);
  const conditions = readConditions(given.conditions);
  const patients = readPatients(given.patients);
  const facts = elevationFacts(given);
  inflateNatively();

  const roads = indexRoads(readRoads(await readText(roadsFile, 'roads'), roadsFile));
  const book = given.book === undefined ? null : await bookFrom(given.book);
  const marks: Mark[] = [
    ...(given.marks === undefined ? [] : readMarks(await readText(given.marks, 'marks'), given.marks)),
    ...(book ? marksOf(book, null) : []),
  ];
  const rule = namedRule ?? (book ? angleRuleOf(book) : defaultAngleRule);
  const units = namedUnits ?? (book && settingsOf(book)?.units) ?? 'us';
  const place = roadAt(roads, at);
  const road = place.ok ? place.value.route.name : null;
  const sources: ElevationSource[] = [];
  try {
    for (const name of elevation) sources.push(await open(name, facts));
    const ask = {
      ...{ roads, marks, at, side, patient, rule, units, conditions, patients },
      events: book ? live(book, 'events') : [],
      resources: book ? resourcesOfBook(book, road) : shippedResources,
      pins: {},
    };
    const computed = await studySite(sources, ask);
    const field =
      book && fieldOfBook(book, siteAt(book, at, computed.site.sideAzimuthDeg), new Date().toISOString().slice(0, 10));
    const study = field ? await studySite(sources, { ...ask, field }) : computed;
    if (given.svg !== undefined) await writeSvg(given.svg, studySvg(study, { units }));
    process.stdout.write(given.json ? `${JSON.stringify(study, null, 1)}\n` : studyReport(study, units));
  } finally {
    await Promise.all(sources.map((source) => source.close()));
  }
}

/** A site of the book this near to the asked place is that place, metres. */
const SAME_PLACE_M = 15;

/** The book's site at a place on that side of the road, whose readings and sign-offs then count; null where it has none there. */
function siteAt(book: Book, at: LonLat, sideAzimuthDeg: number): string | null {
  const { toLocal } = localPlane(at);
  let best: string | null = null;
  let least = SAME_PLACE_M;
  for (const { id, place } of live(book, 'sites')) {
    const { x, y } = toLocal(place);
    const away = Math.hypot(x, y);
    const sameSide = Math.cos(toRadians(place.sideAzimuthDeg - sideAzimuthDeg)) > 0;
    if (sameSide && away <= least) [best, least] = [id, away];
  }
  return best;
}

function needed<T>(option: string, value: T | undefined): T {
  if (value === undefined) throw new UsageError(`${option} is missing; see --help.`);
  return value;
}

const MOST_PATIENTS = 20;

function readPatients(text: string | undefined): number {
  const count = Number(text ?? 1);
  if (Number.isInteger(count) && count >= 1 && count <= MOST_PATIENTS) return count;
  throw new UsageError(`--patients "${text}" is not a whole number from 1 to ${MOST_PATIENTS}.`);
}

function ruleNamed(name: string | undefined): AngleRule | null {
  if (name === undefined) return null;
  const rule = angleRules.find((candidate) => candidate.name === name);
  if (!rule) {
    throw new UsageError(`--rule "${name}" is not one of ${angleRules.map((candidate) => candidate.name).join(', ')}.`);
  }
  return rule;
}

function elevationFacts(given: {
  crs?: string | undefined;
  'vertical-unit'?: string | undefined;
  'terrain-kind'?: string | undefined;
  'vertical-rmse'?: string | undefined;
  'collected-on'?: string | undefined;
}): ElevationOptions {
  const verticalUnit = readWord('--vertical-unit', given['vertical-unit'], ['m', 'ft', 'us-ft'] as const);
  const kind = readWord('--terrain-kind', given['terrain-kind'], ['bare-earth', 'surface'] as const);
  const collectedOn = readDay('--collected-on', given['collected-on']);
  const verticalRmseM = readPositive('--vertical-rmse', given['vertical-rmse']);
  return {
    ...(given.crs === undefined ? {} : { crs: given.crs }),
    ...(verticalUnit ? { verticalUnit } : {}),
    ...(kind ? { kind: kind === 'surface' ? 'surface' : 'bare earth' } : {}),
    ...(verticalRmseM ? { verticalRmseM } : {}),
    ...(collectedOn ? { collectedOn } : {}),
  };
}

const open = (name: string, facts: ElevationOptions): Promise<ElevationSource> =>
  openElevation(/^https?:\/\//.test(name) ? urlSource(name) : fileSource(name), facts);

async function bookFrom(path: string): Promise<Book> {
  const source = fileSource(path);
  try {
    return worseOfContested((await readBook(source)).book);
  } finally {
    await source.close?.();
  }
}

async function readText(path: string, what: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    throw new UserError('no-file', `The ${what} file ${path} cannot be read (${reason(cause)}); check the path.`, {
      cause,
    });
  }
}

async function writeSvg(path: string, svg: string): Promise<void> {
  try {
    await writeFile(path, svg);
  } catch (cause) {
    throw new UserError('no-write', `The drawing cannot be written to ${path} (${reason(cause)}); check the folder.`, {
      cause,
    });
  }
}

function reason(cause: unknown): string {
  const code = (cause as { code?: string }).code;
  return code === 'ENOENT' ? 'no such file or folder' : code === 'EACCES' ? 'no permission' : (code ?? 'unreadable');
}
