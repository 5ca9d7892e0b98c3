import type { Evenness } from './evenness.ts';
import { SECTION_STEP_M } from './sections.ts';

/** Another bench is looked for this near the road found, metres, on ground as level and nearly as even as the road. */
const NEAR_M = 15;
const LEVEL_SLOPE = 0.08;
const EVEN_TIMES = 1.5;
const LEAST_EVEN_M = 0.04;
/** It stands apart from the road: this far out and this much higher or lower than the road's own plane there, metres. */
const APART_M = 5;
const STEP_M = 1;
/** So many stations must show it. */
const AGREE = 8;

/**
 * A second bench beside the road (a lower leg, a driveway, an old grade): its offset from the road found and its height
 * over it at each station, metres, NaN where there is none. The road might be either of the two.
 */
export function secondBench({ count, columns, stride, rms, across, height }: Evenness): {
  offsetM: Float64Array;
  riseM: Float64Array;
} {
  const middle = (columns - 1) / 2;
  const metres = stride * SECTION_STEP_M;
  const offsetM = new Float64Array(count).fill(Number.NaN);
  const riseM = new Float64Array(count).fill(Number.NaN);
  for (let i = 0; i < count; i++) {
    const centre = i * columns + middle;
    const limit = Math.max(LEAST_EVEN_M, EVEN_TIMES * rms[centre]);
    for (let c = Math.ceil(APART_M / metres); c <= NEAR_M / metres && Number.isNaN(offsetM[i]); c++) {
      for (const side of [-1, 1]) {
        const at = centre + side * c;
        if (!(rms[at] <= limit && Math.abs(across[at]) <= LEVEL_SLOPE)) continue;
        const step = height[at] - height[centre] - across[centre] * side * c * metres;
        if (Math.abs(step) < STEP_M) continue;
        offsetM[i] = side * c * metres;
        riseM[i] = step;
      }
    }
  }
  for (let i = 0; i < count; ) {
    let end = i;
    while (end < count && Number.isNaN(offsetM[end]) === Number.isNaN(offsetM[i])) end++;
    if (end - i < AGREE) offsetM.fill(Number.NaN, i, end);
    i = end;
  }
  return { offsetM, riseM };
}
