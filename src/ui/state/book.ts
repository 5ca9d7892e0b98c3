import { create } from 'zustand';
import type {
  CorrectionRecord,
  EventRecord,
  MarkRecord,
  MeasurementRecord,
  PhotoRecord,
  SignOffRecord,
  SiteRecord,
  SupportPlaceRecord,
} from '../../book/index.ts';
import type { OpenBook } from '../../io/store/index.ts';

/** The book as the screens see it: records that are not deleted, by id. */
export interface BookState {
  /** The living book itself, for screens that need more of it; null before one is open. */
  readonly opened: OpenBook | null;
  readonly sites: ReadonlyMap<string, SiteRecord>;
  readonly marks: ReadonlyMap<string, MarkRecord>;
  readonly measurements: ReadonlyMap<string, MeasurementRecord>;
  readonly corrections: ReadonlyMap<string, CorrectionRecord>;
  readonly signOffs: ReadonlyMap<string, SignOffRecord>;
  readonly supportPlaces: ReadonlyMap<string, SupportPlaceRecord>;
  readonly photos: ReadonlyMap<string, PhotoRecord>;
  readonly events: ReadonlyMap<string, EventRecord>;
  /** What undo would take back and redo bring back, in words; null where there is nothing. */
  readonly undo: string | null;
  readonly redo: string | null;
  /** Edits on their way to where they are kept. */
  readonly saving: number;
  /** Edits that the device could not keep: they are on this screen alone. */
  readonly unsaved: number;
  /** Why an edit was not kept; null when all are. */
  readonly problem: string | null;
  /** Edits that no copy off the device holds are enough to remind of one. */
  readonly remind: boolean;
  /** Edits that the browser had lost and the second copy on this device gave back. */
  readonly recovered: number;
  /** How the second copy on this device stands. */
  readonly secondCopy: OpenBook['secondCopy'];
  /** Only for as long as the page is open. */
  readonly fleeting: boolean;
}

export const emptyBookState: BookState = {
  opened: null,
  sites: new Map(),
  marks: new Map(),
  measurements: new Map(),
  corrections: new Map(),
  signOffs: new Map(),
  supportPlaces: new Map(),
  photos: new Map(),
  events: new Map(),
  undo: null,
  redo: null,
  saving: 0,
  unsaved: 0,
  problem: null,
  remind: false,
  recovered: 0,
  secondCopy: 'none',
  fleeting: false,
};

export const useBook = create<BookState>()(() => emptyBookState);

/** Tables that the screens hold. */
export const shownTables = [
  'sites',
  'marks',
  'measurements',
  'corrections',
  'signOffs',
  'supportPlaces',
  'photos',
  'events',
] as const;
