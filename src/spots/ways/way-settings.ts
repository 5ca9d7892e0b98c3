import type { CarrySettings, FitSettings, RopeSettings } from '../../rigging/index.ts';

/** Everything that a book sets about ways. */
export interface WaySettings extends CarrySettings, RopeSettings, FitSettings {}
