import type { StudyProfile } from '../../study/index.ts';

/** Eyes of somebody who stands, metres above the ground (judgement; for the drawing alone). */
const EYE_M = 1.6;
/** Room above the eyes and below the ground, metres. */
const OVER_M = 0.5;
const UNDER_M = 1;

/** A person on the ground: feet, and eyes straight above them, in units of the view box. */
export interface Stander {
  readonly x: number;
  readonly y: number;
  readonly eyeY: number;
}

/** Ground from the side at one scale both ways, and who stands at the ends of what is read there; units of the view box. */
export interface SideView {
  readonly scale: number;
  /** The ground line from one side of the box to the other, as far as the ground is known. */
  readonly ground: string;
  /** The same, closed below. */
  readonly earth: string;
  /** The ground between the two ends. */
  readonly stretch: string;
  readonly ends: readonly [Stander, Stander];
}

/**
 * The ground around `spanM` (metres from the edge, behind it negative) in a box of `width` by `height`, the span a little left of the
 * middle: the ground falls to the right, so words stand free above it there. Null where the ground is not known at both ends.
 */
export function sideView(
  profile: StudyProfile,
  spanM: readonly [number, number],
  width: number,
  height: number,
): SideView | null {
  const line = groundLine(profile);
  const [fromM, toM] = spanM;
  const first = line[0];
  const last = line.at(-1);
  if (!first || !last || !(toM > fromM) || fromM < first[0] - 1e-6 || toM > last[0] + 1e-6) return null;
  const within = [[fromM, heightAt(line, fromM)] as const]
    .concat(line.filter(([m]) => m > fromM && m < toM))
    .concat([[toM, heightAt(line, toM)] as const]);
  const top = Math.max(...within.map(([, z]) => z)) + EYE_M + OVER_M;
  const bottom = Math.min(...within.map(([, z]) => z)) - UNDER_M;
  const scale = Math.min(height / (top - bottom), (0.45 * width) / (toM - fromM));
  const middleM = (fromM + toM) / 2;
  const middleZ = (top + bottom) / 2;
  const x = (m: number): number => round(0.4 * width + (m - middleM) * scale);
  const y = (z: number): number => round(height / 2 + (middleZ - z) * scale);
  const path = (points: readonly (readonly [number, number])[]): string =>
    points.map(([m, z], i) => `${i === 0 ? 'M' : 'L'}${x(m)} ${y(z)}`).join('');
  const inBox = clipped(line, middleM - (0.4 * width) / scale, middleM + (0.6 * width) / scale);
  const stander = (m: number): Stander => {
    const z = heightAt(line, m);
    return { x: x(m), y: y(z), eyeY: y(z + EYE_M) };
  };
  return {
    scale,
    ground: path(inBox),
    earth: `${path(inBox)}V${height}H${x(inBox[0]![0])}Z`,
    stretch: path(within),
    ends: [stander(fromM), stander(toM)],
  };
}

type Line = readonly (readonly [number, number])[];

/** Distance and height, from behind the edge to the end of the descent. */
function groundLine({ distanceM, elevationM, behind }: StudyProfile): Line {
  const back = behind.distanceM.map((m, i) => [m, behind.elevationM[i]!] as const).reverse();
  return [...back, ...distanceM.map((m, i) => [m, elevationM[i]!] as const)];
}

function heightAt(line: Line, m: number): number {
  const i = Math.max(
    1,
    line.findIndex(([at]) => at >= m),
  );
  const [m0, z0] = line[i - 1]!;
  const [m1, z1] = line[i] ?? line[i - 1]!;
  return m1 === m0 ? z0 : z0 + Math.min(1, Math.max(0, (m - m0) / (m1 - m0))) * (z1 - z0);
}

/** The part between two distances, cut there. */
function clipped(line: Line, fromM: number, toM: number): Line {
  const a = Math.max(fromM, line[0]![0]);
  const b = Math.min(toM, line.at(-1)![0]);
  return [[a, heightAt(line, a)], ...line.filter(([m]) => m > a && m < b), [b, heightAt(line, b)]];
}

const round = (px: number): number => Math.round(px * 10) / 10;
