import { create } from 'zustand';
import type { UnitSystem } from '../../units/index.ts';

/** Light as the system has it, or as the person chose. */
export type LightChoice = 'system' | 'day' | 'night';

/** How a person reads the screens. */
export interface ReadingState {
  readonly units: UnitSystem;
  readonly light: LightChoice;
}

export const useReading = create<ReadingState>()(() => ({ units: 'us', light: 'system' }));
