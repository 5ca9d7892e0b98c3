import type { MarkRecord, SupportPlaceRecord } from '../../book/index.ts';
import { type BookState, useBook } from './book.ts';
import { type ToolState, useTool } from './tool.ts';

/** A mark or a place for those who come, as it is taken in hand. */
export type InHand =
  | { readonly table: 'marks'; readonly record: MarkRecord; readonly words: string }
  | { readonly table: 'supportPlaces'; readonly record: SupportPlaceRecord; readonly words: string };

/** The record of an id with its table and what it is called; null where the book has none. */
export function thingOf({ marks, supportPlaces }: Pick<BookState, 'marks' | 'supportPlaces'>, id: string | null) {
  const mark = id === null ? undefined : marks.get(id);
  if (mark) return { table: 'marks', record: mark, words: mark.name ?? mark.kind } satisfies InHand;
  const place = id === null ? undefined : supportPlaces.get(id);
  return place ? ({ table: 'supportPlaces', record: place, words: place.name } satisfies InHand) : null;
}

/** What is in hand now; null for nothing. */
export const inHand = (tool: Pick<ToolState, 'markId'> = useTool.getState()): InHand | null =>
  thingOf(useBook.getState(), tool.markId);

/** Its shape on the map, WGS 84. */
export const shapeOf = (thing: InHand): MarkRecord['geometry'] =>
  thing.table === 'marks'
    ? thing.record.geometry
    : { type: 'Point', coordinates: [thing.record.at.lon, thing.record.at.lat] };
