import type { FeatureCollection } from 'geojson';
import type { AngleClass, Mark, SupportPlaceRecord } from '../book/index.ts';
import type { LonLatBox } from '../io/index.ts';

/** Where a name stands beside its site. */
export type NameSide = 'left' | 'right';

/** A site on the map. */
export interface MapSite {
  readonly id: string;
  readonly name: string;
  readonly lon: number;
  readonly lat: number;
  /** What to plan as, "undecided" where the class is; left out where nothing has been worked out. */
  readonly look?: AngleClass | 'undecided';
  /** Second line of its label, as "34°, 33 to 36"; left out where there is none. */
  readonly figures?: string;
  /** Nobody has checked it on the ground. */
  readonly unchecked?: boolean;
  /** The only side on which the map's own side does not cut its name; left out where both do. */
  readonly nameSide?: NameSide;
}

/** A mark, or a place for those who come. */
export type MapMark = Pick<Mark, 'id' | 'name' | 'geometry'> & {
  readonly kind: Mark['kind'] | SupportPlaceRecord['kind'];
};

/** What lies under a study on the map; GeoJSON in WGS 84 longitude, latitude. */
export interface MapDistrict {
  readonly elevationBounds: LonLatBox;
  readonly tileMaxZoom: number;
  /** What the map shows first, null to show all the elevation. */
  readonly roadsBounds: LonLatBox | null;
  readonly roads: FeatureCollection;
  readonly features: FeatureCollection;
  readonly marks: readonly MapMark[];
  readonly sites: readonly MapSite[];
  /** One line: whose data these are. */
  readonly attribution: string;
}
