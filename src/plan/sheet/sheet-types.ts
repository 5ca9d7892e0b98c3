import type { CardLineRecord, SiteRecord, SupportPlaceRecord } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { ShownPlace } from '../place-words.ts';
import type { PaperName } from './paper.ts';

/** Who looked at the site, and when. */
export interface SheetCheck {
  readonly by: string;
  readonly role: string | null;
  /** YYYY-MM-DD */
  readonly on: string;
  readonly method: 'walked' | 'drove' | 'desk';
  readonly conditions: string | null;
  /** Readings in the book for this site. */
  readonly readings: number;
}

/** A road for the locator: lon, lat pairs in degrees (stride 2). */
export interface LocatorRoad {
  readonly name: string | null;
  readonly line: readonly number[];
}

/** A photo as a data address; nothing is fetched. */
export interface SheetPhoto {
  /** `data:image/jpeg;base64,…`, png or webp. */
  readonly data: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly caption: string;
}

export type SheetSite = Pick<SiteRecord, 'id' | 'name' | 'notes' | 'radio'>;
export type SheetCardLine = Pick<CardLineRecord, 'heading' | 'order' | 'text'>;
export type SheetPlace = ShownPlace & Pick<SupportPlaceRecord, 'notes'>;

/** Everything that stands on one site's plan sheet and check card beside the study itself. */
export interface PlanSheet {
  readonly study: Study;
  readonly site: SheetSite;
  /** The book's check card; without any line the shipped one is printed. */
  readonly cardLines: readonly SheetCardLine[];
  readonly district: string;
  /** Mile along the road, where its markers tell one. */
  readonly mile: string | null;
  /** Metres along the road, from the same end for all sites of it. */
  readonly alongM: number;
  readonly check: SheetCheck | null;
  /** Day by which somebody should look again, YYYY-MM-DD, where that day has passed. */
  readonly overdueSince: string | null;
  /** Sentences that head the sheet beside the study's own stops: what changed since somebody was there. */
  readonly stops: readonly string[];
  /** Landing zones, staging and parking that somebody surveyed for this site. */
  readonly places: readonly SheetPlace[];
  readonly roads: readonly LocatorRoad[];
  readonly photos: readonly SheetPhoto[];
  /** Where the program that shows this site is served, ending in a slash; null where nobody said. */
  readonly address: string | null;
}

/** How it is printed. */
export interface SheetOptions {
  readonly paper: PaperName;
  readonly units: UnitSystem;
}

/** Millimetres of the bar that tells whether a print is at its size. */
export const CHECK_BAR_MM = 100;
