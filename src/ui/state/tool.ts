import { create } from 'zustand';
import type { MarkKind } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { Pins } from '../../study/index.ts';
import type { Measured } from '../../workers/index.ts';

/** What the next tap on the map does: nothing but look, one cut of the stencil, the tape, or a new place for the mark in hand. */
export type ToolName = 'look' | 'site' | MarkKind | 'spot' | 'landing zone' | 'measure' | 'move';

export interface ToolState {
  readonly tool: ToolName;
  /** Corners of the line or area being drawn, or the ends being measured. */
  readonly corners: readonly LonLat[];
  readonly measured: Measured | null;
  /** Corners of the thing in hand while one of them moves, an area's closed; null while none does. */
  readonly moving: readonly LonLat[] | null;
  /** The mark, landing zone, staging or parking in hand; null for none. */
  readonly markId: string | null;
  /** What the spot tool parks, an apparatus's id (null for the first that the study has), and what it is pinned as. */
  readonly parked: { readonly apparatus: string | null; readonly role: keyof Pins };
  /** What the last tap did or why it did nothing, one sentence. */
  readonly said: string | null;
}

export const idleTool: ToolState = {
  tool: 'look',
  corners: [],
  measured: null,
  moving: null,
  markId: null,
  parked: { apparatus: null, role: 'anchor' },
  said: null,
};

export const useTool = create<ToolState>()(() => idleTool);
