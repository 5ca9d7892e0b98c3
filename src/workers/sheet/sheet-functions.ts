import { type Book, publishedAddressOf } from '../../book/index.ts';
import type { CallPack, CallSite } from '../../io/offline/index.ts';
import {
  cardPageSvg,
  locatorRoads,
  type PlanSheet,
  phonePageSvg,
  planPageSvg,
  planSheetHtml,
  type SheetOptions,
  type SheetPhoto,
  sheetOfBook,
} from '../../plan/index.ts';
import { indexRoads, mileText } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';

/** What a plan sheet is made from here. `site` is null for a roadside that nobody surveyed. */
export interface SheetInputs {
  readonly study: Study;
  readonly name: string;
  readonly site: CallSite | null;
  readonly pack: Pick<CallPack, 'district' | 'roads' | 'units'>;
  readonly book: Book | null;
  readonly photos: readonly SheetPhoto[];
  /** YYYY-MM-DD. */
  readonly today: string;
  /** Where this program is served, ending in a slash; the book's own address, if it gives one, goes first. */
  readonly address: string;
}

/**
 * What a plan sheet is drawn as: SVG texts of one column for a phone, of the front and the back of the paper, and the whole as one
 * HTML file that opens anywhere.
 */
export type SheetSide = 'phone' | 'front' | 'back' | 'html';

export interface SheetFunctions {
  /** Draws the sides asked for; the book tells the check, the card and the surveyed places. */
  draw(ask: {
    readonly of: SheetInputs;
    readonly sides: readonly SheetSide[];
  }): Promise<Partial<Record<SheetSide, string>>>;
}

export const sheetFunctions: SheetFunctions = {
  draw: async ({ of, sides }) => {
    const pages = sheetPages(of);
    return Object.fromEntries(sides.map((side) => [side, pages[side]()] as const));
  },
};

function sheetPages({ study, name, site, pack, book, today, ...inputs }: SheetInputs): Record<SheetSide, () => string> {
  const address = (book && publishedAddressOf(book)) ?? inputs.address;
  const ways = pack.roads.map((road, i) => ({
    id: `road/${i}`,
    name: road.name,
    line: Float64Array.from(road.line),
    tags: {},
  }));
  const roads = indexRoads({ ways, features: [] });
  const known =
    book && site ? sheetOfBook(book, site.id, study, { roads, today, address, photos: inputs.photos }) : null;
  const plain: PlanSheet = {
    study,
    site: { id: site?.id ?? 'unsurveyed', name, notes: '', radio: null },
    cardLines: [],
    district: pack.district,
    mile: null,
    alongM: site?.stationM ?? 0,
    check: null,
    overdueSince: null,
    stops: [],
    places: [],
    roads: locatorRoads(roads.network, study.site),
    photos: [],
    address: site ? address : null,
  };
  const base = known ?? plain;
  const mile = base.mile ?? (site?.mile == null ? null : mileText(site.mile));
  const sheet = { ...base, mile, district: base.district || pack.district };
  const options: SheetOptions = { paper: pack.units === 'us' ? 'letter' : 'a4', units: pack.units };
  return {
    phone: () => phonePageSvg(sheet, pack.units),
    front: () => planPageSvg(sheet, options),
    back: () => cardPageSvg(sheet, options),
    html: () => planSheetHtml(sheet, options),
  };
}
