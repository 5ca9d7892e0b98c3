import { escapeXml } from '../svg.ts';
import { cardPageSvg } from './card-page.ts';
import { indexPages } from './index-page.ts';
import { type PaperName, papers } from './paper.ts';
import { phonePageSvg } from './phone-page.ts';
import { planPageSvg } from './plan-page.ts';
import { inRoadOrder } from './road-order.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';

/** One site's plan sheet, the check card on its back, as an HTML file that stands alone: own style, no script, nothing fetched. */
export const planSheetHtml = (sheet: PlanSheet, options: SheetOptions): string =>
  pagesHtml(`${sheet.site.name}, plan sheet`, [sheet], bothSides(sheet, options), options);

/** A book of sheets as one HTML file, in the order of `bookPages`. */
export const sheetBookHtml = (sheets: readonly PlanSheet[], options: SheetOptions): string =>
  pagesHtml(
    `${sheets[0]?.district ?? ''} plan sheets`.trim(),
    inRoadOrder(sheets),
    bookPages(sheets, options),
    options,
  );

/** The pages of a book of sheets as SVG: an index, then every site in road order, front and back. */
export function bookPages(sheets: readonly PlanSheet[], options: SheetOptions): string[] {
  const ordered = inRoadOrder(sheets);
  return [...indexPages(ordered, options), ...ordered.flatMap((sheet) => bothSides(sheet, options))];
}

/** Front and back of a site's plan sheet as SVG. */
export const bothSides = (sheet: PlanSheet, options: SheetOptions): string[] => [
  planPageSvg(sheet, options),
  cardPageSvg(sheet, options),
];

/** The style rules under which pages print, one to a leaf: each stands in an element of the class `page`. */
export function printRules(paper: PaperName): string {
  const { cssSize, widthMm, heightMm } = papers[paper];
  return `@page { size: ${cssSize}; margin: 0 }
.page { overflow: hidden }
.page svg { display: block }
@media print {
  .page { width: ${widthMm}mm; height: ${heightMm}mm; break-after: page; break-inside: avoid }
  .page:last-child { break-after: auto }
}`;
}

/** Pages of paper for print and wide screens; on a phone's width the same sheets in one column, many behind a list. */
const pagesHtml = (
  title: string,
  sheets: readonly PlanSheet[],
  pages: readonly string[],
  { paper, units }: SheetOptions,
): string =>
  `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeXml(title)}</title>
<style>
html, body { margin: 0; padding: 0; background: #ffffff }
${printRules(paper)}
@media screen {
  body { background: #d9d4c8 }
  .page { max-width: ${papers[paper].widthMm}mm; margin: 4mm auto; box-shadow: 0 1px 5px #0005 }
  .page svg { width: 100%; height: auto }
}
.phone { display: none }
@media screen and (max-width: 640px) {
  body { background: #ffffff; font: 18px Georgia, "Times New Roman", serif }
  .page { display: none }
  .phone { display: block }
  .phone svg { display: block; width: 100%; height: auto }
  .phone .tap { text-decoration: underline }
  .phone li { padding: 10px 0 }
}
</style>
</head>
<body>
${pages.map((svg) => `<section class="page">${svg}</section>`).join('\n')}
${sheets.length > 1 ? phoneList(title, sheets) : ''}
${sheets.map((sheet, i) => `<section class="phone" id="sheet-${i + 1}">${phonePageSvg(sheet, units)}</section>`).join('\n')}
</body>
</html>
`;

const phoneList = (title: string, sheets: readonly PlanSheet[]): string => {
  const items = sheets.map(
    ({ site, study }, i) =>
      `<li><a href="#sheet-${i + 1}">${escapeXml(site.name)}</a>, ${escapeXml(study.site.road.name ?? 'unnamed road')}${study.angle ? `, plan as ${study.angle.planAs}` : ''}</li>`,
  );
  return `<nav class="phone"><h1>${escapeXml(title)}</h1><ol>${items.join('')}</ol></nav>`;
};
