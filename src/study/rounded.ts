const decimals = (value: number, places: number): number => {
  const scale = 10 ** places;
  const rounded = Math.round(value * scale) / scale;
  return Object.is(rounded, -0) ? 0 : rounded;
};

/** Metres to the millimetre. */
export const metres = (value: number): number => decimals(value, 3);
/** Degrees to a thousandth. */
export const degrees = (value: number): number => decimals(value, 3);
/** Longitude or latitude to 1e-8°. */
export const lonLatDegrees = (value: number): number => decimals(value, 8);
/** A share of one to four places. */
export const share = (value: number): number => decimals(value, 4);
/** A list in metres to the millimetre. */
export const metresOf = (values: ArrayLike<number>): number[] => Array.from(values, metres);
/** Metres to the millimetre, or null for a missing value. */
export const metresOrNull = (value: number): number | null => (Number.isFinite(value) ? metres(value) : null);
/** Kilonewtons to the newton. */
export const kilonewtons = (value: number): number => decimals(value, 3);
/** Minutes to a thousandth. */
export const minutesOf = (value: number): number => decimals(value, 3);
