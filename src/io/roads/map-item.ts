import type { Tags } from '../../road/index.ts';

/** One mapped thing as a file gives it, before it is known what it is. Coordinates: lon, lat pairs in degrees, stride 2. */
export interface MapItem {
  readonly id: string;
  readonly tags: Tags;
  readonly shape: 'point' | 'line' | 'area';
  readonly coordinates: Float64Array;
}
