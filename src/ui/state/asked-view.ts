import { create } from 'zustand';
import type { MapView } from '../address.ts';

/** The map view that an address asked for in the open window; another object each time, null before the first. */
export const useAskedView = create<{ readonly view: MapView | null }>()(() => ({ view: null }));
