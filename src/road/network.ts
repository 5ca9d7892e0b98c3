/** Tags as OpenStreetMap writes them: key to value, both texts. */
export type Tags = Readonly<Record<string, string>>;

/** One road as drawn: `line` holds lon, lat pairs in degrees (stride 2), in the direction of drawing. */
export interface RoadWay {
  readonly id: string;
  /** `name` or else `ref`; null where the road has neither. */
  readonly name: string | null;
  readonly line: Float64Array;
  readonly tags: Tags;
}

export type MapFeatureKind = 'water' | 'wire' | 'pole' | 'barrier' | 'wall' | 'cliff' | 'embankment' | 'trail';

/** Something mapped near the roads; `coordinates` holds lon, lat pairs in degrees (stride 2), closed for an area. */
export interface MapFeature {
  readonly id: string;
  readonly kind: MapFeatureKind;
  readonly shape: 'point' | 'line' | 'area';
  readonly coordinates: Float64Array;
  readonly tags: Tags;
}

/** A district's roads and what is mapped beside them, as read from one or more files. */
export interface RoadNetwork {
  readonly ways: readonly RoadWay[];
  readonly features: readonly MapFeature[];
}
