import { fillPits, type Pit, pitsOf } from './pits.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** A stretch of road, stations in metres. */
export interface Span {
  readonly fromM: number;
  readonly toM: number;
}

/** What lies under a station of road. */
export const UNDER = { ground: 0, trench: 1, structure: 2 } as const;

/** A culvert trench: at most this wide at half its depth, stations (four of floor and its smeared sides), and this deep. */
const TRENCH_STATIONS = 7;
const TRENCH_DEPTH_M = 0.3;
const TRENCH_FOOT_M = 0.1;
/** A gap that a bridge leaves: at most this long, at least this deep, with ends this steep (tangent over 2 stations). */
const GAP_STATIONS = 120;
const GAP_DEPTH_M = 1.5;
const GAP_FOOT_M = 1;
const GAP_END_SLOPE = 0.35;
/** The road's own grade is taken off the profile over this many stations either side before trenches are sought. */
const GRADE_HALF = 20;
/** Samples either side of the centre that make the road's own profile. */
const PROFILE_HALF = 4;
/** Trenches are bridged this far to either side, and sought again this many stations along: they cross askew. */
const FILL_HALF = Math.round(12 / SECTION_STEP_M);
const ASKEW = 14;

/** The road's profile: median of 4 m about the centre line at each station, metres. */
export function roadProfile({ count, half, width, z }: Sections): Float64Array {
  const out = new Float64Array(count);
  const window = new Float64Array(2 * PROFILE_HALF + 1);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < window.length; k++) window[k] = z[i * width + half - PROFILE_HALF + k];
    out[i] = window.includes(Number.NaN) ? Number.NaN : window.sort()[PROFILE_HALF];
  }
  return out;
}

/**
 * Where the ground under the road is not the road: bridges and tunnels by their tags, gaps in the profile that bare-earth
 * filters leave under a bridge, and narrow culvert trenches. One value of `UNDER` a station.
 */
export function findStructures(profile: Float64Array, firstM: number, tagged: readonly Span[]): Uint8Array {
  const count = profile.length;
  const under = new Uint8Array(count);
  for (const { from, to, depthM } of pitsOf(profile, GAP_STATIONS, GAP_FOOT_M)) {
    const steep = Math.min(steepest(profile, from - 1, from + 4), steepest(profile, to - 4, to + 1));
    if (depthM >= GAP_DEPTH_M && steep >= GAP_END_SLOPE) under.fill(UNDER.structure, from, to + 1);
  }
  for (const pit of trenches(profile)) under.fill(UNDER.trench, pit.from, pit.to + 1);
  for (const { fromM, toM } of tagged) {
    const from = Math.max(0, Math.ceil(fromM - firstM));
    const to = Math.min(count - 1, Math.floor(toM - firstM));
    if (from <= to) under.fill(UNDER.structure, from, to + 1);
  }
  return under;
}

/** Culvert trenches in a road's profile. */
export function trenches(profile: Float64Array): Pit[] {
  const level = offGrade(profile);
  return pitsOf(level, 2 * TRENCH_STATIONS, TRENCH_FOOT_M).filter(
    ({ depthM, halfWidth }) => depthM >= TRENCH_DEPTH_M && halfWidth <= TRENCH_STATIONS,
  );
}

/** The profile less its running median slope line: a trench on a grade has ends of different height. */
function offGrade(profile: Float64Array): Float64Array {
  const count = profile.length;
  return profile.map((z, i) => {
    const from = Math.max(0, i - GRADE_HALF);
    const window = profile.slice(from, Math.min(count, i + GRADE_HALF + 1)).sort();
    return z - window[window.length >> 1];
  });
}

function steepest(profile: Float64Array, from: number, to: number): number {
  let most = 0;
  for (let k = Math.max(0, from); k + 2 <= Math.min(profile.length - 1, to); k++) {
    most = Math.max(most, Math.abs(profile[k + 2] - profile[k]) / 2);
  }
  return most;
}

/**
 * Bridges culvert trenches in the sections near the road: along each column, the road's grade taken off, what lies in a
 * pit near the trench is raised to a straight line from one rim to the other.
 */
export function bridgeTrenches({ count, half, width, z }: Sections, profile: Float64Array, under: Uint8Array): void {
  for (let i = 0; i < count; i++) {
    if (under[i] !== UNDER.trench) continue;
    let end = i;
    while (end + 1 < count && under[end + 1] === UNDER.trench) end++;
    const from = Math.max(0, i - ASKEW);
    const to = Math.min(count - 1, end + ASKEW);
    const grade = (profile[to] - profile[from]) / Math.max(1, to - from);
    const column = new Float64Array(to - from + 1);
    for (let j = half - FILL_HALF; j <= half + FILL_HALF; j++) {
      for (let k = 0; k < column.length; k++) column[k] = z[(from + k) * width + j] - grade * k;
      fillPits(column, 2 * TRENCH_STATIONS, TRENCH_FOOT_M, TRENCH_DEPTH_M);
      for (let k = 0; k < column.length; k++) z[(from + k) * width + j] = column[k] + grade * k;
    }
    for (let k = i; k <= end; k++) profile[k] = z[k * width + half];
    i = end;
  }
}
