import type { RoadSpec, SideShape } from './road-ground.ts';

/** Height of the cross-section over the road line at signed distance q. */
export function template(spec: RoadSpec, s: number, q: number): number {
  const side = q >= 0 ? spec.right : spec.left;
  const width = side.width(s);
  const d = Math.abs(q) - width;
  const bench = (t: number): number => -spec.crossfall(s) * Math.sign(q) * t;
  let z = d <= 0 ? bench(Math.abs(q)) : bench(width) + beyond(side, s, d, -spec.crossfall(s) * Math.sign(q));
  const r = side.rounding?.(s) ?? 0;
  if (r > 0 && Math.abs(d) < r) z = rounded(side, s, d, r, bench(width), -spec.crossfall(s) * Math.sign(q));
  if (side.berm) {
    const t = (Math.abs(q) - (width - side.berm.insideM)) / (side.berm.widthM / 2);
    if (Math.abs(t) < 1) z += side.berm.heightM(s) * (0.5 + 0.5 * Math.cos(Math.PI * t));
  }
  return z;
}

function beyond(side: SideShape, s: number, d: number, flat: number): number {
  const turn = side.turn(s);
  let z = 0;
  let left = d;
  if (side.ditch && turn > 0) {
    const w = side.ditch.widthM;
    const t = Math.min(left, w);
    z -= side.ditch.depthM(s) * (0.5 - 0.5 * Math.cos((2 * Math.PI * t) / w));
    left -= t;
  }
  if (side.soft && turn < 0) {
    const t = Math.min(left, side.soft.widthM(s));
    z -= side.soft.slope * t;
    left -= t;
  }
  const run = side.runM(s);
  const steep = side.slope(s) * turn + flat * (1 - Math.abs(turn));
  const natural = side.natural(s) * turn + flat * (1 - Math.abs(turn));
  const bench2 = side.secondBench;
  if (bench2 && turn < 0) {
    const a = Math.min(left, bench2.atM);
    const b = Math.min(Math.max(0, left - bench2.atM), bench2.widthM);
    return z + steep * a - 0.02 * b + steep * Math.max(0, left - bench2.atM - bench2.widthM);
  }
  return z + steep * Math.min(left, run) + natural * Math.max(0, left - run);
}

/** A parabola between the bench and the slope, tangent to both at distance r from the corner. */
function rounded(side: SideShape, s: number, d: number, r: number, z0: number, flat: number): number {
  const out = (beyond(side, s, r, flat) - 0) / r;
  const t = d + r;
  return z0 - flat * r + flat * t + ((out - flat) * t * t) / (4 * r);
}
