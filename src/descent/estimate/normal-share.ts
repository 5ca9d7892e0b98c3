/** Share of a standard normal at or above z, [source: abramowitz-stegun, 26.2.17], error under 7.5e-8. */
export function normalAbove(z: number): number {
  const a = Math.abs(z);
  const t = 1 / (1 + 0.2316419 * a);
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = Math.exp((-a * a) / 2) * 0.3989422804014327 * series;
  return z >= 0 ? tail : 1 - tail;
}
