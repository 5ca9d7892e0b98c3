import { fairConditions } from '../../../src/rigging/index.ts';
import { laneCount } from '../../../src/spots/index.ts';
import { seededRandom, toDegrees } from '../../../src/units/index.ts';
import { type MadeSite, SITE_M } from '../layout-sites.ts';
import { gravel, paved } from '../made-bench.ts';

/** A roadside by formula: an arc or a straight of one grade and crossfall between two ends of the bench; metres. */
export interface TwinRoad {
  readonly seed: number;
  readonly site: MadeSite;
  /** Curvature of the line, 1/m, positive to the left. */
  readonly curvature: number;
  /** Firm width outward of the line by station. */
  readonly leftM: (s: number) => number;
  readonly rightM: (s: number) => number;
  readonly leftFalls: boolean;
  readonly turnout: boolean;
  readonly wet: boolean;
  readonly gravel: boolean;
  /** Tangents: up along the drawing, down to the right. */
  readonly climb: number;
  readonly across: number;
  readonly halfWayM: number;
  readonly lanes: number;
}

/**
 * A random roadside: straight or bent down to 40 m of radius, 5 to 14 m wide, some with a turnout, cut or fill on the far
 * side, grade −8 to 8 %, paved or gravel, dry or wet; below it a slope of 18 to 44° and 10 to 45 m.
 */
export function twinRoad(seed: number): TwinRoad {
  const random = seededRandom(70_000 + seed);
  const draw = (a: number, b: number): number => a + (b - a) * random.next();
  const curvature = random.next() < 0.4 ? 0 : (random.next() < 0.5 ? -1 : 1) * draw(1 / 200, 1 / 40);
  const wide = draw(5, 14);
  const turnout = random.next() < 0.35;
  const more = turnout ? draw(0.2, 0.5) * (wide - 4.6) : 0;
  const left = Math.min(draw(2.3, 4.5), (wide - more) / 2);
  const right = wide - more - left;
  const [middle, half, ramp] = [SITE_M + draw(-8, 8), draw(8, 22), draw(3, 10)];
  const rightM = (s: number): number =>
    right + more * Math.max(0, Math.min(1, (half + ramp - Math.abs(s - middle)) / ramp));
  const leftFalls = random.next() < 0.3;
  const climb = draw(-0.08, 0.08);
  const across = draw(-0.02, 0.04);
  const onGravel = random.next() < 0.3;
  const wet = random.next() < 0.25;
  const angleDeg = draw(18, 44);
  const traits = onGravel ? gravel : paved;
  const site: MadeSite = {
    bench: {
      left: leftFalls
        ? { kind: 'drop', widthM: () => left, slope: -0.6 }
        : { kind: 'rise', widthM: () => left, slope: 1 },
      right: { kind: 'drop', widthM: rightM, slope: -Math.tan((angleDeg * Math.PI) / 180) },
      curvature: () => curvature,
      gradeDeg: () => toDegrees(Math.atan(climb)),
      crossfallDeg: () => toDegrees(Math.atan(across)),
    },
    slope: { angleDeg, groundM: draw(10, 45) },
    traits,
    conditions: { ...fairConditions, wet },
  };
  return {
    ...{ seed, site, curvature, leftM: () => left, rightM, leftFalls, turnout, wet, gravel: onGravel, climb, across },
    ...{ halfWayM: traits.carriageway.valueM / 2, lanes: laneCount(traits) },
  };
}
