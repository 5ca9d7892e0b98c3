import type { Geometry } from 'geojson';
import type { AnyRecord, MarkRecord } from '../../book/index.ts';
import type { PositionQuestion } from '../../geo/index.ts';
import type { PlacedTable } from './placed.ts';

/** One thing that a file would add to a book. */
export interface PreviewItem {
  /** Where it stands in the file, for people: "feature 3", "row 12". */
  readonly where: string;
  readonly name: string;
  readonly geometry: Geometry;
  readonly notes: string;
  /** A checked record, ready to be added, or null while `wants` is open. */
  readonly ready: { readonly table: PlacedTable; readonly record: AnyRecord } | null;
  /** What only a person can say: which side of the road drops, which kind of mark it is. */
  readonly wants: 'side' | 'kind' | null;
  /** Kind of mark that the file says. */
  readonly kind: MarkRecord['kind'] | null;
  /** To be answered before it is added: outside the district, swapped, a sign. */
  readonly question: PositionQuestion | null;
  /** True where the book already has a record with this id: adding would change it. */
  readonly exists: boolean;
}

/** Something of the file that would not be added, and why. */
export interface Skipped {
  readonly where: string;
  readonly why: string;
}

/** What a file would add, with nothing applied. Every item of the file is either in `items` or in `skipped`. */
export interface Preview {
  readonly format: 'GeoJSON' | 'GPX' | 'KML' | 'CSV';
  readonly items: readonly PreviewItem[];
  readonly skipped: readonly Skipped[];
  /** Sentences about the file as a whole, such as columns that are not read. */
  readonly remarks: readonly string[];
}

/** The most places that one file may bring; practice, no source. */
export const MOST_ITEMS = 50_000;
