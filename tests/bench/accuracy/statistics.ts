/** Plain statistics of the accuracy report. */

export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return Number.NaN;
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const low = Math.floor(at);
  return sorted[low] + (at - low) * (sorted[Math.min(low + 1, sorted.length - 1)] - sorted[low]);
}

export const mean = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Largest mean of absolute values over `length` neighbours in the given order; NaN where there are fewer. */
export function worstRun(values: readonly number[], length: number): number {
  let worst = Number.NaN;
  for (let i = 0; i + length <= values.length; i++) {
    const here = mean(values.slice(i, i + length).map(Math.abs));
    if (!(here <= worst)) worst = here;
  }
  return worst;
}

/** Share of values for which a test holds. */
export const shareOf = <T>(values: readonly T[], test: (value: T) => boolean): number =>
  values.length === 0 ? Number.NaN : values.filter(test).length / values.length;
