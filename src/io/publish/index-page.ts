import { formatDegreesMinutes } from '../../geo/index.ts';
import { mileText } from '../../road/index.ts';
import { CAUTION } from '../../study/index.ts';
import { inertHtml as text } from '../exchange/index.ts';
import type { CallSite } from '../offline/index.ts';
import { type Publication, publishedPaths, READABLE_BY_ANYONE } from './publication.ts';

/** The first page of a published folder: every site in road order with its plan sheet, and the way to the call view. No script. */
export function indexPage({ pack, stems, notWorkedOut, without }: Publication): string {
  const { district, invented, sites, publishedAtMs } = pack;
  const failed = new Map(notWorkedOut.map(({ id, why }) => [id, why]));
  const roads = [...new Set(sites.map(({ road }) => road))];
  const title = text(district === '' ? 'Roadside plan sheets' : district);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src 'self'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<link rel="icon" href="mark.svg" type="image/svg+xml">
<title>${title}: plan sheets</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1><bdi>${title}</bdi></h1>
${invented ? '<p>An invented district, for trying out.</p>\n' : ''}<p><a class="key" href="call/index.html">Open the call view</a> finds a place and its plan, also without a network once this device has been there.</p>
<p class="caution">${text(CAUTION)}</p>
${roads.map((road) => roadSection(road, sites, stems, failed)).join('\n')}
<p><a href="${publishedPaths.sheets}">All sheets in one file, to print</a></p>
<footer>
<p>Published ${new Date(publishedAtMs ?? pack.madeAtMs).toISOString().slice(0, 10)}. ${READABLE_BY_ANYONE}${withoutWords(without)}</p>
</footer>
</main>
</body>
</html>
`;
}

function roadSection(
  road: string | null,
  sites: readonly CallSite[],
  stems: Publication['stems'],
  failed: ReadonlyMap<string, string>,
): string {
  const rows = sites
    .filter((site) => site.road === road)
    .map((site) => siteRow(site, stems[site.id]!, failed.get(site.id)));
  return `<section>
<h2><bdi>${text(road ?? 'Road without a name')}</bdi></h2>
<ol>
${rows.join('\n')}
</ol>
</section>`;
}

function siteRow(site: CallSite, stem: string, why: string | undefined): string {
  const { id, name, mile, planAs, undecided, checkedOn } = site;
  const words = [
    ...(mile === null ? [] : [`mile ${mileText(mile)}`]),
    planAs === null ? 'no angle class' : `${undecided ? 'undecided, ' : ''}plan as ${planAs}`,
    checkedOn === null ? 'not field-verified' : `checked in the field ${checkedOn}`,
  ];
  if (why !== undefined) {
    // The call view shows what the book has of it.
    const place = [...(mile === null ? [] : [`mile ${mileText(mile)}`]), formatDegreesMinutes(site)].join(', ');
    return `<li><a href="call/index.html#site=${encodeURIComponent(id)}"><bdi>${text(name)}</bdi></a> <small>${text(place)}; not worked out: ${text(why)}</small></li>`;
  }
  return `<li><a href="${publishedPaths.sheet(stem)}"><bdi>${text(name)}</bdi></a> <small>${text(words.join(', '))}</small></li>`;
}

/** What was left out, as a sentence; nothing where nothing was. */
export function withoutWords({ crashes, patientPhotos, platePhotos }: Publication['without']): string {
  const parts = [
    ...(crashes > 0 ? [`${crashes} crash ${crashes === 1 ? 'point' : 'points'}`] : []),
    ...(patientPhotos > 0 ? [`${photos(patientPhotos)} that may show a patient`] : []),
    ...(platePhotos > 0 ? [`${photos(platePhotos)} not said to be free of number plates`] : []),
  ];
  return parts.length === 0 ? '' : ` Left out: ${parts.join(', ')}.`;
}

const photos = (count: number): string => `${count} ${count === 1 ? 'photo' : 'photos'}`;

const STYLE = `
:root { color-scheme: light dark }
body { margin: 0; font: 1.05rem/1.5 system-ui, sans-serif; background: #f7f3e9; color: #14181b }
main { max-width: 44rem; margin: 0 auto; padding: 1rem }
h1 { font-size: 1.5rem } h2 { font-size: 1.1rem; margin: 1.5rem 0 .3rem }
ol { list-style: none; margin: 0; padding: 0 }
li { padding: .25rem 0; border-top: 1px solid #14181b33 }
li a, p > a { display: inline-block; min-width: 2.75rem; padding: .6rem 0 }
small { display: block; font-size: .9rem }
a { color: #0b4a6f } .key { font-weight: 700 }
.caution, footer { border-top: 2px solid; padding-top: .5rem }
@media (prefers-color-scheme: dark) { body { background: #14181b; color: #f3efe4 } a { color: #9cd2f2 } li { border-color: #f3efe433 } }
`;
