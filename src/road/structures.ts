import { SECTION_STEP_M, type Sections } from './sections.ts';

/** A stretch of road, stations in metres. */
export interface Span {
  readonly fromM: number;
  readonly toM: number;
}

/** What lies under a station of road. */
export const UNDER = { ground: 0, trench: 1, structure: 2 } as const;

/** Widest trench that is bridged, stations; a wider gap in the road's profile is a structure. */
const TRENCH_STATIONS = 4;
const TRENCH_DEPTH_M = 0.3;
/** A gap in the profile: at most this long, this deep, and with ends this steep (tangent over 2 stations). */
const GAP_STATIONS = 120;
const GAP_DEPTH_M = 1.5;
const GAP_END_SLOPE = 0.35;
/** Depth at which a pit is taken to begin, metres. */
const TRENCH_FOOT_M = 0.06;
const GAP_FOOT_M = 1;
/** Samples either side of the centre that make the road's own profile. */
const PROFILE_HALF = 4;
/** Samples either side of the centre over which a trench is filled. */
const FILL_HALF = Math.round(10 / SECTION_STEP_M);

/** The road's profile: median of 4 m about the centre line at each station, metres. */
export function roadProfile({ count, half, width, z }: Sections): Float64Array {
  const out = new Float64Array(count);
  const window = new Float64Array(2 * PROFILE_HALF + 1);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < window.length; k++) window[k] = z[i * width + half - PROFILE_HALF + k]!;
    out[i] = window.includes(Number.NaN) ? Number.NaN : window.sort()[PROFILE_HALF]!;
  }
  return out;
}

/**
 * Where the ground under the road is not the road: bridges and tunnels by their tags, gaps in the profile that bare-earth
 * filters leave under a bridge, and culvert trenches up to four stations wide. One value of `UNDER` a station.
 */
export function findStructures(profile: Float64Array, firstM: number, tagged: readonly Span[]): Uint8Array {
  const count = profile.length;
  const under = new Uint8Array(count);
  markPits(profile, TRENCH_STATIONS, TRENCH_DEPTH_M, TRENCH_FOOT_M, 0, UNDER.trench, under);
  markPits(profile, GAP_STATIONS, GAP_DEPTH_M, GAP_FOOT_M, GAP_END_SLOPE, UNDER.structure, under);
  for (const { fromM, toM } of tagged) {
    const from = Math.max(0, Math.ceil(fromM - firstM));
    const to = Math.min(count - 1, Math.floor(toM - firstM));
    if (from <= to) under.fill(UNDER.structure, from, to + 1);
  }
  return under;
}

/**
 * Marks pits of the profile up to `longest` stations long: the profile is closed over one station more (grey-scale closing,
 * Serra 1982), and what was filled by `depthM` or more, between ends at least `endSlope` steep, is a pit; it begins where `footM` was filled.
 */
function markPits(
  profile: Float64Array,
  longest: number,
  depthM: number,
  footM: number,
  endSlope: number,
  mark: number,
  under: Uint8Array,
): void {
  const filled = closed(profile, longest + 1);
  const count = profile.length;
  for (let i = 0; i < count; ) {
    const start = i;
    let deepest = 0;
    while (i < count && filled[i]! - profile[i]! > footM) {
      deepest = Math.max(deepest, filled[i]! - profile[i]!);
      i++;
    }
    if (i === start) {
      i++;
      continue;
    }
    const open = start === 0 || i === count;
    const steepIn = steepest(profile, start - 1, Math.min(i, start + 4));
    const steepOut = steepest(profile, Math.max(start, i - 4), i + 1);
    if (deepest >= depthM && !open && Math.min(steepIn, steepOut) >= endSlope) under.fill(mark, start, i);
  }
}

function steepest(profile: Float64Array, from: number, to: number): number {
  let most = 0;
  for (let k = Math.max(0, from); k + 2 <= Math.min(profile.length - 1, to); k++) {
    most = Math.max(most, Math.abs(profile[k + 2]! - profile[k]!) / 2);
  }
  return most;
}

/** Grey-scale closing with a flat element of `size` stations; NaN counts as no ground and is left. */
function closed(profile: Float64Array, size: number): Float64Array {
  const dilated = windowMost(profile, size, 1);
  return windowMost(dilated, size, -1);
}

/** Largest (sign 1) value of the window that starts at i, or smallest (sign −1) of the window that ends there. */
function windowMost(values: Float64Array, size: number, sign: 1 | -1): Float64Array {
  const count = values.length;
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let most = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < size; k++) {
      const j = i + sign * k;
      if (j < 0 || j >= count) break;
      const v = sign * values[j]!;
      if (v > most) most = v;
    }
    out[i] = most === Number.NEGATIVE_INFINITY ? Number.NaN : sign * most;
  }
  return out;
}

/** Bridges culvert trenches: each column of the sections, near the road, runs straight from one bank to the other. */
export function bridgeTrenches({ count, half, width, z }: Sections, under: Uint8Array): void {
  for (let i = 0; i < count; i++) {
    if (under[i] !== UNDER.trench) continue;
    let end = i;
    while (end < count && under[end] === UNDER.trench) end++;
    const before = Math.max(0, i - 1);
    const after = Math.min(count - 1, end);
    for (let j = half - FILL_HALF; j <= half + FILL_HALF; j++) {
      const a = z[before * width + j]!;
      const b = z[after * width + j]!;
      for (let k = i; k < end; k++) {
        const straight = a + ((b - a) * (k - before)) / (after - before);
        if (straight > z[k * width + j]!) z[k * width + j] = straight;
      }
    }
    i = end;
  }
}
