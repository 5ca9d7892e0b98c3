import { worseOfContested } from '../../book/index.ts';
import type { OpenBook } from '../../io/store/index.ts';
import { type PaperName, type PlanSheet, sheetOfBook } from '../../plan/index.ts';
import { indexRoads, type RoadIndex } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';
import { type UnitSystem, UserError } from '../../units/index.ts';
import type { DistrictView } from '../../workers/index.ts';
import { sitePhotos } from '../site-photos.ts';

/** What a sheet is made from on the desk. */
export interface SheetInputs {
  readonly opened: Pick<OpenBook, 'book' | 'photo'>;
  readonly district: { readonly name: string; readonly view: Pick<DistrictView, 'roads'> };
  readonly siteId: string;
  readonly study: Study;
}

/** The plan sheet of a site of the open book. Throws a `UserError` where the book has no such site. */
export async function siteSheet({ opened, district, siteId, study }: SheetInputs): Promise<PlanSheet> {
  const book = worseOfContested(opened.book());
  const photos = await sitePhotos(book, siteId, (hash) => opened.photo(hash));
  const today = new Date().toISOString().slice(0, 10);
  const sheet = sheetOfBook(book, siteId, study, { roads: roadsOf(district.view), today, address: null, photos });
  if (!sheet) throw new UserError('no-site', `The book has no site "${siteId}" any more; pick one of the list.`);
  return { ...sheet, district: sheet.district || district.name };
}

/** Letter for a reader of feet, A4 for a reader of metres. */
export const paperFor = (units: UnitSystem): PaperName => (units === 'us' ? 'letter' : 'a4');

let indexed: { readonly of: Pick<DistrictView, 'roads'>; readonly roads: RoadIndex } | null = null;

/** The district's roads as a sheet needs them; the same for every sheet of a district. */
function roadsOf(view: Pick<DistrictView, 'roads'>): RoadIndex {
  if (indexed?.of !== view) {
    const ways = view.roads.features.flatMap(({ geometry, properties }, i) =>
      geometry.type === 'LineString'
        ? [
            {
              id: `road/${i}`,
              name: properties?.name || null,
              line: Float64Array.from(geometry.coordinates.flat()),
              tags: {},
            },
          ]
        : [],
    );
    indexed = { of: view, roads: indexRoads({ ways, features: [] }) };
  }
  return indexed.roads;
}
