import { angleRuleOf, type Book, live, marksOf, type SiteRecord, settingsOf, worseOfContested } from '../book/index.ts';
import { type ElevationSource, openElevation, photosToSend, readBook, studySite } from '../io/index.ts';
import { fileSource, inflateNatively, writeWhole } from '../io/node/index.ts';
import {
  cardPageSvg,
  type PaperName,
  type PlanSheet,
  planPageSvg,
  planSheetHtml,
  type SheetOptions,
  sheetBookHtml,
  sheetOfBook,
} from '../plan/index.ts';
import type { Conditions } from '../rigging/index.ts';
import { indexRoads, type RoadIndex, roadAt } from '../road/index.ts';
import { fieldOfBook, resourcesOfBook, type Study } from '../study/index.ts';
import { type UnitSystem, UserError } from '../units/index.ts';
import { sideOfAsk } from '../workers/index.ts';
import { addressOf, needed, readOptions, readWord, UsageError } from './arguments.ts';
import { readConditions } from './conditions.ts';
import { listedFiles, rasterOptions, rasterSource, readRoadsFile, sheetPhotos } from './district-files.ts';

export const planHelp = `plan: the one-page plan sheet of a site, the check card on its back

  npm run -s brinkbook -- plan --book FILE --site ID --out FILE.html|.svg [options]

  --book FILE             book with the site, its fleet, kit, calls, checks and check card
  --site ID               the site; given several times, or "all": a book of sheets in road order with an index (.html)
  --elevation FILE|URL    elevation raster (GeoTIFF), several may be given; without it those that the book lists
  --roads FILE            roads as GeoJSON or Overpass JSON; without it the file that the book lists
  --paper letter|a4       size of the paper (default letter)
  --units us|metric       feet or metres; without it those of the book
  --conditions LIST       wet, ice, night, wind, separated by commas: longer, heavier, farther from the edge
  --address URL           where the book is published; the sheet's code then opens the site there
  --out FILE              FILE.html has both sides; FILE.svg has the front, and FILE-card.svg the check card
`;

const options = {
  book: { type: 'string' },
  site: { type: 'string', multiple: true },
  elevation: { type: 'string', multiple: true },
  roads: { type: 'string' },
  paper: { type: 'string' },
  units: { type: 'string' },
  conditions: { type: 'string' },
  address: { type: 'string' },
  out: { type: 'string' },
} as const;

/** Runs `plan`: studies the sites and writes their sheets; throws `UsageError` or `UserError`. */
export async function planCommand(args: string[]): Promise<void> {
  const given = readOptions(args, options);
  const bookFile = needed('--book', given.book);
  const asked = needed('--site', given.site);
  const out = needed('--out', given.out);
  const form = formOf(out);
  const paper: PaperName = readWord('--paper', given.paper, ['letter', 'a4'] as const) ?? 'letter';
  const namedUnits = readWord('--units', given.units, ['us', 'metric'] as const);
  const conditions = readConditions(given.conditions);
  const address = addressOf('--address', given.address);
  inflateNatively();
  const source = fileSource(bookFile);
  const opened: ElevationSource[] = [];
  try {
    const { book: asKept, file } = await readBook(source);
    const book = worseOfContested(asKept);
    const sites = sitesAsked(book, asked, bookFile);
    if (form === 'svg' && sites.length > 1)
      throw new UsageError(`--out ${out} holds one site, but ${sites.length} came; name a file .html.`);
    const roads = indexRoads(await readRoadsFile(given.roads ?? listedFiles(book, 'roads', '--roads')[0]!));
    for (const name of given.elevation ?? listedFiles(book, 'elevation', '--elevation'))
      opened.push(await openElevation(rasterSource(name), rasterOptions(book, name)));
    const units = namedUnits ?? settingsOf(book)?.units ?? 'us';
    const sheetOptions: SheetOptions = { paper, units };
    const shown = photosToSend(book, { crashes: false, patientPhotos: false });
    const photos = await sheetPhotos(
      file,
      sites.map(({ id }) => id),
      shown,
    );
    const today = new Date().toISOString().slice(0, 10);
    const sheets: PlanSheet[] = [];
    for (const site of sites) {
      const study = await studyOf(book, site, { roads, sources: opened, conditions, units, today });
      sheets.push(sheetOfBook(book, site.id, study, { roads, today, address, photos: photos.get(site.id) ?? [] })!);
      if (process.stderr.isTTY && sites.length > 1) process.stderr.write(`\r${sheets.length} of ${sites.length} `);
    }
    await writeSheets(out, form, sheets, sheetOptions);
  } finally {
    await Promise.all(opened.map((one) => one.close()));
    await source.close?.();
  }
}

function formOf(out: string): 'html' | 'svg' {
  const ending = /\.(html|svg)$/iu.exec(out)?.[1]?.toLowerCase();
  if (ending === 'html' || ending === 'svg') return ending;
  throw new UsageError(`--out ${out} ends in neither .html nor .svg; see --help.`);
}

function sitesAsked(book: Book, asked: readonly string[], file: string): SiteRecord[] {
  const all = live(book, 'sites');
  if (asked.includes('all')) {
    if (all.length === 0) throw new UserError('no-site', `${file} holds no site; add one, or choose another book.`);
    return all;
  }
  return [...new Set(asked)].map((id) => {
    const site = all.find((one) => one.id === id);
    if (site) return site;
    const some = all
      .slice(0, 8)
      .map((one) => one.id)
      .join(', ');
    throw new UserError(
      'no-site',
      `${file} has no site "${id}"; ${all.length === 0 ? 'it holds none' : `give one of its sites, such as ${some}`}.`,
    );
  });
}

interface Asked {
  readonly roads: RoadIndex;
  readonly sources: readonly ElevationSource[];
  readonly conditions: Conditions;
  readonly units: UnitSystem;
  /** YYYY-MM-DD */
  readonly today: string;
}

/** The study of a site as its book has it: side, patient point, patients and pins. */
function studyOf(book: Book, site: SiteRecord, { roads, sources, conditions, units, today }: Asked): Promise<Study> {
  const { place, patientPoint, patients, pinnedAnchor, pinnedTurn, pinnedBelay } = site;
  const at = { lon: place.lon, lat: place.lat };
  const found = roadAt(roads, at);
  if (!found.ok) throw found.error;
  return studySite(sources, {
    ...{ roads, at, patients, conditions, units, patient: patientPoint },
    side: sideOfAsk({ azimuthDeg: place.sideAzimuthDeg }, at, found.value),
    marks: marksOf(book, site.id),
    rule: angleRuleOf(book),
    events: live(book, 'events'),
    field: fieldOfBook(book, site.id, today),
    resources: resourcesOfBook(book, found.value.route.name),
    pins: {
      ...(pinnedAnchor && { anchor: pinnedAnchor }),
      ...(pinnedTurn && { turn: pinnedTurn }),
      ...(pinnedBelay && { belay: pinnedBelay }),
    },
  });
}

async function writeSheets(
  out: string,
  form: 'html' | 'svg',
  sheets: readonly PlanSheet[],
  sheetOptions: SheetOptions,
): Promise<void> {
  const write = (path: string, text: string): Promise<void> => writeWhole(path, new TextEncoder().encode(text));
  const [first] = sheets;
  if (form === 'svg') {
    await write(out, planPageSvg(first!, sheetOptions));
    await write(out.replace(/\.svg$/iu, '-card.svg'), cardPageSvg(first!, sheetOptions));
  } else {
    await write(out, sheets.length > 1 ? sheetBookHtml(sheets, sheetOptions) : planSheetHtml(first!, sheetOptions));
  }
}
