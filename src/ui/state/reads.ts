import { create } from 'zustand';
import type { AngleClass } from '../../book/index.ts';
import type { PlaceAlong } from '../../workers/index.ts';

/** What a site of the list reads, from its study under the rule in force. */
export interface SiteRead {
  readonly className: AngleClass | 'undecided';
  readonly planAs: AngleClass;
  readonly governingDeg: number;
  readonly rangeDeg: readonly [number, number];
  readonly ropeLineM: number;
  /** Resets of the best turned and the best straight haul; null where there is none. */
  readonly resets: { readonly turned: number | null; readonly straight: number | null };
  readonly water: boolean;
  readonly screeningOnly: boolean;
}

export interface ReadsState {
  /** Under which rule and in which state of the book the reads were made. */
  readonly bySite: ReadonlyMap<string, SiteRead | { readonly none: string }>;
  /** Where along its road each site lies, null where no road is near; left out where not known yet. */
  readonly along: ReadonlyMap<string, PlaceAlong | null>;
}

export const useReads = create<ReadsState>()(() => ({ bySite: new Map(), along: new Map() }));
