import { seededRandom } from '../../units/index.ts';

/** Number of entries; prime, so that draws of any length start at different places. */
const SIZE = 65_521;

let table: Float64Array | null = null;

/** Standard normal numbers, always the same ones: drawn once, read many times. */
export function normalTable(): Float64Array {
  if (table) return table;
  const random = seededRandom(1);
  table = Float64Array.from({ length: SIZE }, () => random.normal());
  return table;
}
