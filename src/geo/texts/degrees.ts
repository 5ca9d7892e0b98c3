import type { LonLat } from '../types.ts';

/**
 * Decimal degrees, latitude first: "44.01235, -128.05679". Five decimals are 1.1 m; rounded to nearest.
 */
export function formatDecimalDegrees({ lon, lat }: LonLat, decimals = 5): string {
  const figure = (degrees: number): string => {
    const text = degrees.toFixed(decimals);
    return Number(text) === 0 ? text.replace('-', '') : text;
  };
  return `${figure(lat)}, ${figure(lon)}`;
}

/**
 * Degrees and decimal minutes as aviation writes them, without leading zeros: "44° 0.741′ N, 128° 3.407′ W". Three decimals
 * are 1.9 m; rounded to nearest, and minutes that round to 60 become the next degree. [source: sar-matrix-2007]
 */
export function formatDegreesMinutes({ lon, lat }: LonLat, decimals = 3): string {
  return `${degreesMinutes(lat, 'N', 'S', decimals)}, ${degreesMinutes(lon, 'E', 'W', decimals)}`;
}

function degreesMinutes(value: number, positive: string, negative: string, decimals: number): string {
  const steps = 10 ** decimals;
  const total = Math.round(Math.abs(value) * 60 * steps);
  const degrees = Math.floor(total / (60 * steps));
  const minutes = (total - degrees * 60 * steps) / steps;
  return `${degrees}° ${minutes.toFixed(decimals)}′ ${value < 0 && total > 0 ? negative : positive}`;
}
