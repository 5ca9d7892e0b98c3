/** A count that lands on a whole number up to rounding stays there. */
const COUNT_TOLERANCE = 1e-9;

/** Smallest whole number not under the value; 3 + 1e-10 is still 3. */
export const ceilWithin = (value: number): number => Math.ceil(value - COUNT_TOLERANCE);

/** Largest whole number not over the value; 3 − 1e-10 is already 3. */
export const floorWithin = (value: number): number => Math.floor(value + COUNT_TOLERANCE);
