import { create } from 'zustand';

export interface MapGoneState {
  /** Why there is no map to look at or tap on, one sentence; null where there is one, or it is being loaded. */
  readonly gone: string | null;
}

export const useMapGone = create<MapGoneState>()(() => ({ gone: null }));
