import type { Descent, DescentAngle } from '../descent/index.ts';
import type { LocalPlane } from '../geo/index.ts';
import { degrees, lonLatDegrees, metres, metresOf, share } from './rounded.ts';
import type { Position, StudyAngle, StudyDescent, StudyProfile } from './study.ts';

/** A local point as a position for people and files. */
export function positionOf(plane: LocalPlane, x: number, y: number): Position {
  const { lon, lat } = plane.toLonLat({ x, y });
  return { lon: lonLatDegrees(lon), lat: lonLatDegrees(lat) };
}

/** The contract's `descent` of a worked-out descent. */
export function descentPart(descent: Descent, plane: LocalPlane): StudyDescent {
  const { line, rope } = descent;
  const along = (distanceM: number): Position =>
    positionOf(plane, line.start.x + line.direction.x * distanceM, line.start.y + line.direction.y * distanceM);
  const whole = descent.whole;
  return {
    azimuthDeg: degrees(line.azimuthDeg),
    horizontalM: metres(line.lengthM),
    dropM: metres(descent.dropM),
    groundLengthM: metres(descent.groundLengthM),
    ropeLineM: metres(rope.lengthM),
    end: { ...positionOf(plane, line.end.x, line.end.y), elevationM: metres(descent.endElevationM), why: line.why },
    crossings: descent.crossings.map(({ kind, distanceM, widthM }) => ({
      kind,
      distanceM: metres(distanceM),
      widthM: metres(widthM),
      ...along(distanceM),
    })),
    steps: descent.steps.map(({ distanceM, heightM, source }) => ({
      distanceM: metres(distanceM),
      heightM: metres(heightM),
      source,
    })),
    contacts: rope.contacts.map(({ distanceM, bendDeg }) => ({
      distanceM: metres(distanceM),
      bendDeg: degrees(bendDeg),
    })),
    sightLostAtM: descent.sightLostAtM === null ? null : metres(descent.sightLostAtM),
    ropeCorners: {
      distanceM: metresOf(rope.cornerDistanceM),
      elevationM: metresOf(rope.cornerElevationM),
    },
    whole: whole?.angle
      ? {
          horizontalM: metres(whole.horizontalM),
          dropM: metres(whole.dropM),
          ropeLineM: metres(whole.ropeLineM),
          governingDeg: degrees(whole.angle.governingDeg),
          planAs: whole.angle.planAs,
        }
      : null,
  };
}

/** The contract's `angle`. */
export function anglePart(angle: DescentAngle, nearbyMaxDeg: number, meanDeg: number): StudyAngle {
  const { probability, rule } = angle;
  return {
    governingDeg: degrees(angle.governingDeg),
    governingSigmaDeg: degrees(angle.governingSigmaDeg),
    rangeDeg: [degrees(angle.rangeDeg[0]), degrees(angle.rangeDeg[1])],
    nearbyMaxDeg: degrees(nearbyMaxDeg),
    stretchM: [metres(angle.stretchM[0]), metres(angle.stretchM[1])],
    meanDeg: degrees(meanDeg),
    windowM: metres(angle.windowM),
    class: angle.class,
    planAs: angle.planAs,
    probability: { low: share(probability.low), steep: share(probability.steep), high: share(probability.high) },
    rule: { name: rule.name, lowMaxDeg: rule.lowMaxDeg, highMinDeg: rule.highMinDeg },
    ropePullOfWeight: share(angle.weight.ropePull),
    groundPressOfWeight: share(angle.weight.groundPress),
  };
}

/** The contract's `profile`. */
export function profilePart({ profile, behind }: Descent): StudyProfile {
  return {
    distanceM: metresOf(profile.distanceM),
    elevationM: metresOf(profile.elevationM),
    angleDeg: Array.from(profile.angleDeg, degrees),
    behind: { distanceM: metresOf(behind.distanceM), elevationM: metresOf(behind.elevationM) },
  };
}
