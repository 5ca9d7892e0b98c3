import {
  type Book,
  contestedForSite,
  live,
  type MarkRecord,
  type PhotoRecord,
  quantities,
  type SiteRecord,
} from '../../book/index.ts';
import { formatDecimalDegrees, formatDegreesMinutes, formatUsng, geodesicM } from '../../geo/index.ts';
import { CAUTION } from '../../study/index.ts';
import { compassWord, formatLength, type UnitSystem } from '../../units/index.ts';
import { type Asked, photosToSend } from '../book-file/index.ts';
import { imageTypeOf } from '../photos/image-type.ts';
import { inertHtml as text } from './inert.ts';
import { changedWords, type SiteFacts, siteFacts } from './site-facts.ts';

/** What a neighbour's page is made of beside the book. */
export interface NeighbourChoice {
  /** Ids of the sites; null for all. */
  readonly sites: readonly string[] | null;
  /** A photo that shows a patient goes out only when asked for. Crashes never stand on this page. */
  readonly patientPhotos: boolean;
  readonly units: UnitSystem;
  /** Bytes of a photo by its hash; null where they are not here. */
  photo(hash: string): Promise<Uint8Array | null>;
}

/**
 * Chosen sites as one HTML page that reads without the app: no script, nothing loaded, photos inside. It holds what the book
 * holds of each site; angles, rope and crew are worked out from elevation and are not on it, and it says so.
 */
export async function writeNeighbour(book: Book, choice: NeighbourChoice): Promise<string> {
  const chosen = choice.sites && new Set(choice.sites);
  const sites = live(book, 'sites').filter(({ id }) => !chosen || chosen.has(id));
  const asked: Asked = { crashes: false, patientPhotos: choice.patientPhotos };
  const photos = photosToSend(book, asked);
  const facts = siteFacts(book);
  const parts: string[] = [];
  for (const site of sites) parts.push(await siteSection(book, site, { photos, facts: facts.get(site.id)! }, choice));
  const district = text(book.tables.settings[0]?.district || 'A fire district');
  const ids = new Set(sites.map(({ id }) => id));
  const of = (list: readonly PhotoRecord[]): number => list.filter(({ siteId }) => ids.has(siteId)).length;
  const hidden = of(live(book, 'photos')) - of(photos);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<meta name="referrer" content="no-referrer">
<title>${district}: ${sites.length} roadside ${sites.length === 1 ? 'site' : 'sites'}</title>
<style>${STYLE}</style>
</head>
<body>
<h1><bdi>${district}</bdi></h1>
<p class="caution">${text(CAUTION)}</p>
<p>${sites.length} roadside ${sites.length === 1 ? 'site' : 'sites'} as the district’s book has them. Angles, rope and crew are worked out from elevation by a study of each site and are not on this page.${hidden === 0 ? '' : ` Left out: ${hidden} ${hidden === 1 ? 'photo that shows' : 'photos that show'} a patient.`}</p>
${parts.join('\n')}
</body>
</html>
`;
}

async function siteSection(
  book: Book,
  site: SiteRecord,
  { photos, facts }: { readonly photos: readonly PhotoRecord[]; readonly facts: SiteFacts },
  { units, photo }: NeighbourChoice,
): Promise<string> {
  const { check } = facts;
  const stop = changedWords(facts);
  const { place, patientPoint: patient } = site;
  const both = (at: { lon: number; lat: number }): string =>
    text([formatDecimalDegrees(at), formatDegreesMinutes(at), formatUsng(at)].filter(Boolean).join(' · '));
  const rows: [string, string | null][] = [
    ['Position', both(place)],
    ['Drops toward', `${compassWord(place.sideAzimuthDeg)}, ${Math.round(place.sideAzimuthDeg) % 360}° true`],
    ['Road', site.roadName && user(site.roadName)],
    ['Kind of place', text(site.type)],
    ['Patient point', patient && `${both(patient)}, ${formatLength(geodesicM(place, patient), units)} away in plan`],
    ['Patients planned for', String(site.patients)],
    ['Radio', site.radio && user(site.radio)],
    [
      'Field check',
      check
        ? `${text(check.on)}, ${text(check.method)}, ${user([check.by, check.role].filter(Boolean).join(', '))}${check.conditions ? `; ${user(check.conditions)}` : ''}`
        : 'not field-verified',
    ],
    ['Notes', site.notes ? user(site.notes) : null],
  ];
  const doubtful = contestedForSite(book, site.id).filter(({ table }) => onPage.has(table));
  if (doubtful.length > 0) {
    rows.push([
      'Undecided',
      `two surveyors differ on: ${text(doubtful.map(({ table, field }) => (table === 'sites' ? field : `${table} ${field}`)).join(', '))}; ask the district`,
    ]);
  }
  const readings = live(book, 'measurements').filter(({ siteId }) => siteId === site.id);
  const marks = live(book, 'marks').filter(({ siteId }) => siteId === site.id);
  const places = live(book, 'supportPlaces').filter(({ siteId }) => siteId === site.id);
  const lists = [
    list(
      'Measured in the field',
      readings.map(
        ({ reading, by, on, sigma }) =>
          `${text(quantities[reading.quantity].words)}: ${reading.quantity.endsWith('Deg') ? `${reading.value}°` : formatLength(reading.value, units)}${sigma === null ? '' : ` ± ${sigma}${reading.quantity.endsWith('Deg') ? '°' : ' m'} (one sigma)`}, ${user(by)}, ${text(on)}`,
      ),
    ),
    list(
      'Marks',
      marks.map((mark) => markLine(mark, both, units)),
    ),
    list(
      'Landing zones, staging, parking',
      places.map(
        ({ kind, name, at, hazards, notes }) =>
          `${text(kind)} ${user(name)}: ${both(at)}${hazards ? `; hazards: ${user(hazards)}` : ''}${notes ? `; ${user(notes)}` : ''}`,
      ),
    ),
  ];
  const figures: string[] = [];
  for (const one of photos.filter(({ siteId }) => siteId === site.id)) figures.push(await figure(one, photo));
  return `<section>
<h2>${user(site.name)}</h2>
${stop ? `<p class="caution">${user(stop)}</p>` : ''}
<table>${rows.map(([name, value]) => (value ? `<tr><th scope="row">${name}</th><td>${value}</td></tr>` : '')).join('')}</table>
${lists.join('')}${figures.join('')}
</section>`;
}

/** Tables whose records of a site stand on the page. */
const onPage: ReadonlySet<string> = new Set(['sites', 'marks', 'measurements', 'signOffs', 'photos', 'supportPlaces']);

/** Text that somebody wrote, kept from turning the direction of what stands beside it. */
const user = (words: string): string => `<bdi>${text(words)}</bdi>`;

const list = (title: string, items: readonly string[]): string =>
  items.length === 0 ? '' : `<h3>${title}</h3><ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul>\n`;

function markLine(mark: MarkRecord, both: (at: { lon: number; lat: number }) => string, units: UnitSystem): string {
  const { geometry } = mark;
  const [lon, lat] =
    geometry.type === 'Point'
      ? geometry.coordinates
      : geometry.type === 'LineString'
        ? geometry.coordinates[0]!
        : geometry.coordinates[0]![0]!;
  const words = [
    text(mark.kind),
    mark.name && user(mark.name),
    mark.trunkDiameterM === null ? null : `trunk ${formatLength(mark.trunkDiameterM, units)}`,
    mark.heightM === null ? null : `${formatLength(mark.heightM, units)} high`,
  ];
  const from = geometry.type === 'Point' ? '' : geometry.type === 'LineString' ? 'a line from ' : 'an area from ';
  return `${words.filter(Boolean).join(', ')}: ${from}${both({ lon, lat })}${mark.notes ? `; ${user(mark.notes)}` : ''}`;
}

async function figure({ hash, caption }: PhotoRecord, photo: NeighbourChoice['photo']): Promise<string> {
  const bytes = await photo(hash);
  const type = bytes && imageTypeOf(bytes);
  if (!type) return `<p>A photo${caption ? ` (${user(caption)})` : ''} is not on the device that wrote this page.</p>`;
  return `<figure><img alt="${text(caption)}" src="data:${type};base64,${base64(bytes)}"><figcaption>${user(caption)}</figcaption></figure>`;
}

function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 0x8000) parts.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  return btoa(parts.join(''));
}

const STYLE = `body{font:16px/1.4 system-ui,sans-serif;max-width:52rem;margin:1rem auto;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.4rem}h2{font-size:1.2rem;border-top:2px solid #111;padding-top:.6rem}h3{font-size:1rem}
table{border-collapse:collapse;width:100%}th{text-align:left;vertical-align:top;width:11rem;font-weight:600}
th,td{padding:.2rem .5rem .2rem 0;border-bottom:1px solid #bbb}td,li,h2{overflow-wrap:anywhere}
.caution{border:2px solid #111;padding:.5rem}img{max-width:100%}section{break-inside:avoid-page}`;
