import { create } from 'zustand';
import { type Place, startPlace } from '../address.ts';

/** Where the desk is, as the address bar says it. */
export const usePlace = create<Place>()(() => startPlace);
