import type { SideSign } from './edge-evidence.ts';
import type { Evenness } from './evenness.ts';
import { SECTION_STEP_M } from './sections.ts';

/** The bench ends within this distance of its middle … */
const REACH_M = 10;
/** … unless the ground goes on as even as the road itself, as a turnout does and a forest floor does not. */
const EVEN_TIMES = 1.5;
const LEAST_EVEN_M = 0.03;
const LEVEL_SLOPE = 0.08;
/** The plane of a turnout may stand this far off that of the road, metres. */
const LEVEL_STEP_M = 0.6;
/** The even window is 5 m wide; an edge stands up to this far beyond its middle. */
const PAST_WINDOW_M = 4;
/** A turnout's reach holds this many stations either side, so that single windows do not cut it. */
const HELD = 5;

/** How far from the centre line the bench of each station may end on one side, metres. */
export function benchReach(even: Evenness, side: SideSign): Float64Array {
  const { count, columns, stride, rms, across, height } = even;
  const middle = (columns - 1) / 2;
  const metres = stride * SECTION_STEP_M;
  const single = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const centre = i * columns + middle;
    const limit = Math.max(LEAST_EVEN_M, EVEN_TIMES * rms[centre]!);
    let c = 0;
    while (c < middle) {
      const at = centre + side * (c + 1);
      const plane = height[centre]! + across[centre]! * side * (c + 1) * metres;
      if (!(rms[at]! <= limit && Math.abs(across[at]!) <= LEVEL_SLOPE)) break;
      if (Math.abs(height[at]! - plane) > LEVEL_STEP_M) break;
      c++;
    }
    single[i] = Math.max(REACH_M, c * metres + PAST_WINDOW_M);
  }
  const held = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let most = 0;
    for (let k = Math.max(0, i - HELD); k <= Math.min(count - 1, i + HELD); k++) most = Math.max(most, single[k]!);
    held[i] = most;
  }
  return held;
}
