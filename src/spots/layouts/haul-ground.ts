import { type Contact, type Descent, ROPE_AT_LITTER_M, type RopeRise, ropeLine } from '../../descent/index.ts';
import {
  type ContactSettings,
  capstanFactor,
  edgeBend,
  type HaulGround,
  type LoadPosition,
} from '../../rigging/index.ts';
import { toDegrees, toRadians } from '../../units/index.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';

/** What a haul works on from one last bend before the edge, and where its rope bends over the ground. */
export interface RopeGround {
  readonly haulGround: HaulGround;
  readonly contacts: readonly Contact[];
}

/**
 * The ground of a haul whose rope comes from `toEdgeM` behind the edge, 0.6 m above the bench there: the taut rope over the
 * ground to the load at every point of the descent, each with its own angle and bends. Null for a descent that has no angle.
 *
 * @param rises what lifts the rope on the bench, such as a barrier
 * @param planBendRad by how much the rope bends in plan at the edge, where it bends over the ground as well
 */
export function haulGround(
  descent: Descent,
  toEdgeM: number,
  rises: readonly RopeRise[],
  settings: ContactSettings,
  planBendRad = 0,
): RopeGround | null {
  const known = kept.get(descent) ?? new Map<string, RopeGround | null>();
  kept.set(descent, known);
  const over = rises.map(({ distanceM, heightM }) => `${distanceM} ${heightM}`);
  const key = [toEdgeM, settings.edgeFriction, planBendRad, ...over].join();
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = makeHaulGround(descent, toEdgeM, rises, settings, planBendRad);
  known.set(key, made);
  return made;
}

/** A descent is kept while spots move on its bench: what was worked out for it once is not worked out again. */
const kept = new WeakMap<Descent, Map<string, RopeGround | null>>();

function makeHaulGround(
  descent: Descent,
  toEdgeM: number,
  rises: readonly RopeRise[],
  settings: ContactSettings,
  planBendRad: number,
): RopeGround | null {
  const { angle, profile, lipAngleDeg, rope, smoothedGroundLengthM, steps } = descent;
  if (angle === null) return null;
  const behind = groundBehind(descent, toEdgeM);
  const line = ropeLine(profile, {
    ...{ startM: LAYOUT_LIMITS.ropeUpM, loadM: ROPE_AT_LITTER_M, rises },
    behind,
  });
  // Never less than the lip alone would bend it: a short steep lip is spanned by the taut line, but not by the litter.
  const wrapRad = Math.max(line.wrapRad, toRadians(edgeBend(lipAngleDeg, LAYOUT_LIMITS.ropeUpM, toEdgeM)));
  const bends = bendsByPosition(descent, behind, rises);
  const positions = bends.map((bendRad, i): LoadPosition => {
    const at = profile.distanceM[i + 1];
    const onSteepest = at >= angle.stretchM[0] && at <= angle.stretchM[1];
    return {
      angleDeg: onSteepest ? Math.max(angle.governingDeg, profile.angleDeg[i + 1]) : profile.angleDeg[i + 1],
      contactsFactor: capstanFactor(settings.edgeFriction, Math.hypot(bendRad, planBendRad)),
    };
  });
  return {
    haulGround: {
      governingDeg: angle.governingDeg,
      lipDeg: lipAngleDeg,
      ropeLineM: rope.lengthM,
      groundLengthM: smoothedGroundLengthM,
      contacts: [{ bendDeg: toDegrees(Math.hypot(wrapRad, planBendRad)), friction: null }],
      positions: notUnder(positions),
      fullBelay: angle.planAs === 'high' || steps.length > 0,
    },
    contacts: line.contacts,
  };
}

/** The positions that some other one does not match in angle and bends both. */
function notUnder(positions: readonly LoadPosition[]): LoadPosition[] {
  const kept: LoadPosition[] = [];
  const steepestFirst = [...positions].sort((a, b) => b.angleDeg - a.angleDeg || b.contactsFactor - a.contactsFactor);
  for (const one of steepestFirst) {
    const last = kept.at(-1);
    if (last === undefined || one.contactsFactor > last.contactsFactor) kept.push(one);
  }
  return kept;
}

/** Ground from a bend to the edge, ascending; past the ground that is known the bench goes on level. */
function groundBehind({ behind, profile }: Descent, toEdgeM: number): { distanceM: number[]; elevationM: number[] } {
  const known = [...behind.distanceM].filter((d) => d > -toEdgeM);
  const heights = [profile.elevationM[0], ...behind.elevationM];
  const before = heights[known.length];
  const after = heights[Math.min(known.length + 1, heights.length - 1)];
  const stepM = known.length < behind.distanceM.length ? -behind.distanceM[known.length] + (known.at(-1) ?? 0) : 1;
  const share = Math.min(1, (toEdgeM + (known.at(-1) ?? 0)) / stepM);
  const last = before + (after - before) * share;
  return {
    distanceM: [-toEdgeM, ...known.reverse()],
    elevationM: [last, ...heights.slice(1, known.length + 1).reverse()],
  };
}

/** Sum of the rope's bends, radians, for the load at each point of the profile but its first. */
function bendsByPosition(
  { profile }: Descent,
  behind: { distanceM: number[]; elevationM: number[] },
  rises: readonly RopeRise[],
): number[] {
  const back = behind.distanceM.length;
  const count = back + profile.distanceM.length;
  const x = Float64Array.from({ length: count }, (_, i) =>
    i < back ? behind.distanceM[i] : profile.distanceM[i - back],
  );
  const z = Float64Array.from({ length: count }, (_, i) =>
    i < back ? behind.elevationM[i] : profile.elevationM[i - back],
  );
  for (const { distanceM, heightM } of rises) z[nearestTo(x, distanceM)] += heightM;
  z[0] += LAYOUT_LIMITS.ropeUpM;
  const hull: number[] = [0];
  const bends: number[] = [];
  const fall = (a: number, bx: number, bz: number): number => Math.atan2(z[a] - bz, bx - x[a]);
  for (let i = 1; i < count; i++) {
    if (i > back) {
      // From the last corner of the rope back: the first from which the load is seen over all later ground.
      const loadZ = z[i] + ROPE_AT_LITTER_M;
      let c = hull.length - 1;
      while (c > 0 && fall(hull[c], x[i], loadZ) <= fall(hull[c - 1], x[hull[c]], z[hull[c]])) c--;
      bends.push(c === 0 ? 0 : fall(hull[c], x[i], loadZ) - fall(hull[0], x[hull[1]], z[hull[1]]));
    }
    while (
      hull.length > 1 &&
      fall(hull[hull.length - 1], x[i], z[i]) <=
        fall(hull[hull.length - 2], x[hull[hull.length - 1]], z[hull[hull.length - 1]])
    ) {
      hull.pop();
    }
    hull.push(i);
  }
  return bends;
}

function nearestTo(x: Float64Array, at: number): number {
  let best = 0;
  for (let i = 1; i < x.length; i++) if (Math.abs(x[i] - at) < Math.abs(x[best] - at)) best = i;
  return best;
}
