import { escapeXml } from '../svg.ts';
import { cardPageSvg } from './card-page.ts';
import { indexPages } from './index-page.ts';
import { type PaperName, papers } from './paper.ts';
import { planPageSvg } from './plan-page.ts';
import { inRoadOrder } from './road-order.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';

/** One site's plan sheet, the check card on its back, as an HTML file that stands alone: own style, no script, nothing fetched. */
export const planSheetHtml = (sheet: PlanSheet, options: SheetOptions): string =>
  pagesHtml(`${sheet.site.name}, plan sheet`, bothSides(sheet, options), options.paper);

/** A book of sheets as one HTML file, in the order of `bookPages`. */
export const sheetBookHtml = (sheets: readonly PlanSheet[], options: SheetOptions): string =>
  pagesHtml(`${sheets[0]?.district ?? ''} plan sheets`.trim(), bookPages(sheets, options), options.paper);

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

const pagesHtml = (title: string, pages: readonly string[], paper: PaperName): string =>
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
</style>
</head>
<body>
${pages.map((svg) => `<section class="page">${svg}</section>`).join('\n')}
</body>
</html>
`;
