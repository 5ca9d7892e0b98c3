/** Metres in an international foot (exact, 1959 agreement). */
export const FOOT_M = 0.3048;
/** Metres in a US survey foot (exact, 1200/3937). */
export const US_SURVEY_FOOT_M = 1200 / 3937;

/** Vertical units a raster may state. */
export type VerticalUnit = 'm' | 'ft' | 'us-ft';

/** Metres in one vertical unit. */
export const METRES_PER: Readonly<Record<VerticalUnit, number>> = { m: 1, ft: FOOT_M, 'us-ft': US_SURVEY_FOOT_M };
