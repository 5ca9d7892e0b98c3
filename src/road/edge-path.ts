import type { EdgeEvidence } from './edge-evidence.ts';
import { SECTION_STEP_M } from './sections.ts';

/** Cost per metre that the edge moves from one station to the next, and the cap at which it jumps instead. */
const COST_PER_METRE = 5;
const COST_JUMP = 25;
/** The edge walks at most this many samples a station; farther is a jump. */
const MOVES = 2;
/** What "no edge" is worth a station: about the evidence that noise alone reaches. */
const NO_EDGE_SCORE = 14;
/** Cost of an edge that begins or ends. */
const COST_BEGIN = 15;

/** Marks a station without edge in an edge path. */
export const NO_EDGE = -1;

/**
 * The end of the bench on one side as one path along the stations (dynamic programming [source: bellman1957]): samples from the
 * centre line, or NO_EDGE. A path walks, jumps where a track leaves, and may have no edge at all.
 */
export function edgePath({ states, score }: EdgeEvidence, count: number): Int16Array {
  const none = states;
  const size = states + 1;
  let best = new Float64Array(size);
  let next = new Float64Array(size);
  const from = new Int16Array(count * size);
  for (let i = 0; i < count; i++) {
    let top = 0;
    for (let j = 1; j < states; j++) if (best[j]! > best[top]!) top = j;
    const jump = best[top]! - COST_JUMP;
    const begin = best[none]! - COST_BEGIN;
    const row = i * size;
    for (let j = 0; j < states; j++) {
      let most = jump;
      let back = top;
      if (begin > most) {
        most = begin;
        back = none;
      }
      const low = j < MOVES ? 0 : j - MOVES;
      const high = j + MOVES >= states ? states - 1 : j + MOVES;
      for (let k = low; k <= high; k++) {
        const value = best[k]! - COST_PER_METRE * SECTION_STEP_M * Math.abs(k - j);
        if (value > most) {
          most = value;
          back = k;
        }
      }
      next[j] = most + score[i * states + j]!;
      from[row + j] = back;
    }
    const end = best[top]! - COST_BEGIN;
    next[none] = Math.max(best[none]!, end) + NO_EDGE_SCORE;
    from[row + none] = best[none]! >= end ? none : top;
    [best, next] = [next, best];
  }
  const path = new Int16Array(count);
  let at = none;
  for (let j = 0; j < states; j++) if (best[j]! > best[at]!) at = j;
  for (let i = count - 1; i >= 0; i--) {
    path[i] = at === none ? NO_EDGE : at;
    at = from[i * size + at]!;
  }
  return path;
}
