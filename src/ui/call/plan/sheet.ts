import { type Book, publishedAddressOf } from '../../../book/index.ts';
import type { CallPack, CallSite } from '../../../io/offline/index.ts';
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
} from '../../../plan/index.ts';
import { indexRoads, mileText } from '../../../road/index.ts';
import type { Study } from '../../../study/index.ts';

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
 * A plan sheet as SVG texts for the screen: one column for a phone, front and back; and whole as one HTML file that opens anywhere. Each
 * is drawn when it is asked for.
 */
export interface SheetPages {
  phone(): string;
  front(): string;
  back(): string;
  html(): string;
}

/** The plan sheet of a place; loaded when somebody asks for it. The book tells the check, the card and the surveyed places. */
export function sheetPages({ study, name, site, pack, book, today, ...inputs }: SheetInputs): SheetPages {
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
