export { cardPageSvg } from './card-page.ts';
export { defaultCardLines } from './default-card.ts';
export { locatorRoads } from './locator.ts';
export type { PaperName } from './paper.ts';
export { planPageSvg } from './plan-page.ts';
export { inRoadOrder } from './road-order.ts';
export { planSheetHtml, sheetBookHtml } from './sheet-html.ts';
export { type SheetRequest, sheetOfBook } from './sheet-of-book.ts';
export * from './sheet-types.ts';
