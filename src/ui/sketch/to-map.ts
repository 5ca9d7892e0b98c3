import type { MarkRecord, SiteRecord, SupportPlaceRecord } from '../../book/index.ts';
import type { MapDistrict, MapMark } from '../../map/index.ts';
import { formatAngleRange, formatDegrees } from '../../units/index.ts';
import { type OpenDistrict, type ReadsState, useBook, useReads } from '../state/index.ts';

/** The district as the map draws it, with the book's sites and marks. */
export const toMapDistrict = ({ view, invented }: OpenDistrict): MapDistrict => ({
  ...view,
  sites: toMapSites(useBook.getState().sites, useReads.getState().bySite, checkedSites()),
  marks: toMapMarks(useBook.getState().marks, useBook.getState().supportPlaces),
  attribution: `${invented ? 'Invented ground, roads and names. ' : ''}Elevation: ${view.elevation.map(({ source }) => source).join(', ')}. Map drawn with MapLibre.`,
});

/** Sites with what has been read of them. */
export const toMapSites = (
  sites: ReadonlyMap<string, SiteRecord>,
  reads: ReadsState['bySite'],
  checked: ReadonlySet<string>,
): MapDistrict['sites'] =>
  [...sites.values()].map(({ id, name, place: { lon, lat } }) => {
    const read = reads.get(id);
    const unchecked = !checked.has(id);
    if (!read || 'none' in read) return { id, name, lon, lat, unchecked };
    const figures = `${formatDegrees(read.governingDeg)}, ${formatAngleRange(...read.rangeDeg)}`;
    return { id, name, lon, lat, look: read.className, figures, unchecked };
  });

/** Ids of sites that somebody has checked on the ground. */
export const checkedSites = (): ReadonlySet<string> =>
  new Set(
    [...useBook.getState().signOffs.values()].filter(({ method }) => method !== 'desk').map(({ siteId }) => siteId),
  );

/** Marks, and the places for those who come. */
export const toMapMarks = (
  marks: ReadonlyMap<string, MarkRecord>,
  places: ReadonlyMap<string, SupportPlaceRecord>,
): MapMark[] => [
  ...[...marks.values()].map(({ id, kind, name, geometry }): MapMark => ({ id, kind, name, geometry })),
  ...[...places.values()].map(
    ({ id, kind, name, at }): MapMark => ({
      ...{ id, kind, name },
      geometry: { type: 'Point', coordinates: [at.lon, at.lat] },
    }),
  ),
];
