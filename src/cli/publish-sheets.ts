import type { Book } from '../book/index.ts';
import type { FolderInMaking } from '../io/node/index.ts';
import { publishedPaths } from '../io/publish/index.ts';
import {
  type PaperName,
  type PlanSheet,
  planSheetHtml,
  type SheetOptions,
  type SheetPhoto,
  sheetBookHtml,
  sheetOfBook,
} from '../plan/index.ts';
import { indexRoads, type RoadNetwork } from '../road/index.ts';
import type { WorkedSites } from './publish-studies.ts';

interface ToPrint {
  readonly book: Book;
  readonly worked: WorkedSites;
  readonly photos: ReadonlyMap<string, readonly SheetPhoto[]>;
  readonly network: RoadNetwork;
  readonly paper: PaperName;
  /** Where the folder will be served, ending in a slash; null for what the book says. */
  readonly address: string | null;
}

/** Writes the plan sheet of every site that was worked out, and all of them in one file. */
export async function writeSheets(
  folder: FolderInMaking,
  { book, worked, photos, network, paper, address }: ToPrint,
): Promise<void> {
  const roads = indexRoads(network);
  const today = new Date().toISOString().slice(0, 10);
  const options: SheetOptions = { paper, units: worked.pack.units };
  const sheets: PlanSheet[] = [];
  for (const [id, study] of worked.studies) {
    const request = { roads, today, address, photos: photos.get(id) ?? [] };
    const sheet = sheetOfBook(book, id, study, request)!;
    await folder.write(publishedPaths.sheet(worked.stems[id]!), planSheetHtml(sheet, options));
    sheets.push(sheet);
  }
  if (sheets.length > 0) await folder.write(publishedPaths.sheets, sheetBookHtml(sheets, options));
}
