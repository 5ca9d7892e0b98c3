import type { Grid } from '../../src/terrain/index.ts';
import { wander } from '../fields/wander.ts';
import { benches, type Feature, features, seed } from '../recipe.ts';
import type { Line } from './line.ts';
import type { RoadLine } from './plan.ts';
import { type RoadDesign, type SideDesign, touches } from './road-design.ts';
import { FALL_COUNT, type SlopeKind } from './shapes.ts';
import { laySlopes } from './slopes.ts';
import { scheduleSlopes } from './stretches.ts';

/** Works out bench, slopes and cuts of every road for every metre. `land` is the ground before roads, metres. */
export function designRoads(lines: readonly RoadLine[], land: Grid, creek: Line): RoadDesign[] {
  return lines.map((road, index) => {
    const bare = bareDesign(road, seed + 40 + index, creek);
    const mine = features.filter((feature) => feature.road === road.key && !road.second);
    layWidths(bare, mine);
    const stretches = road.second ? [] : scheduleSlopes(bare, land, mine, lines, seed + 60 + index);
    for (const side of [0, 1] as const) laySlopes(bare, side, stretches, land, mine, seed + 80 + index * 2 + side);
    for (const f of mine) if (f.what === 'bridge') bare.gap.fill(1, f.from, f.to);
    return bare;
  });
}

function bareDesign({ key, name, line, second }: RoadLine, from: number, creek: Line): RoadDesign {
  const count = line.s.length;
  const tx = new Float64Array(count);
  const ty = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const a = Math.max(0, i - 1);
    const b = Math.min(count - 1, i + 1);
    const length = Math.hypot(line.x[b] - line.x[a], line.y[b] - line.y[a]);
    tx[i] = (line.x[b] - line.x[a]) / length;
    ty[i] = (line.y[b] - line.y[a]) / length;
  }
  const creekSide = Int8Array.from(line.x, (x, i) => sideOfCreek(creek, x, line.y[i]));
  const crossfall = wander(count, 60, from).map((v) => 0.012 * v + 0.012);
  const side = (): SideDesign => ({
    half: new Float32Array(count),
    fill: new Float32Array(count * FALL_COUNT),
    carve: new Float32Array(count * FALL_COUNT),
    kind: new Array<SlopeKind>(count).fill('natural'),
    carveLift: new Float32Array(count).fill(Number.POSITIVE_INFINITY),
    cut: new Float32Array(count),
    ditch: new Float32Array(count),
    rough: new Float32Array(count),
    berm: new Float32Array(count),
    apron: new Float32Array(count),
  });
  return { key, name, line, second, tx, ty, crossfall, sides: [side(), side()], gap: new Uint8Array(count), creekSide };
}

function sideOfCreek(creek: Line, x: number, y: number): number {
  let best = 120 * 120;
  let side = 0;
  for (let k = 0; k + 1 < creek.x.length; k++) {
    const dx = x - creek.x[k];
    const dy = y - creek.y[k];
    const d = dx * dx + dy * dy;
    if (d >= best) continue;
    best = d;
    side = (creek.x[k + 1] - creek.x[k]) * dy - (creek.y[k + 1] - creek.y[k]) * dx > 0 ? 1 : -1;
  }
  return side;
}

function layWidths(road: RoadDesign, mine: readonly Feature[]): void {
  const { halfM, wanderM } = benches[road.key];
  const count = road.line.s.length;
  for (const side of [0, 1] as const) {
    const { half } = road.sides[side];
    const noise = wander(count, 18, seed + 20 + side + road.key.length);
    const wide = road.second ? 2.6 : halfM;
    for (let i = 0; i < count; i++) half[i] = wide + wanderM * noise[i];
    for (const f of mine) {
      if (!touches(f, side)) continue;
      if (f.what === 'turnout') spread(half, f, 3.4, 11);
      if (f.what === 'hairpin') spread(half, f, 0.8, 15);
      if (f.what === 'berm') spread(road.sides[side].berm, f, 0.42, 6);
    }
  }
}

/** Adds `amount` over a feature's stations, tapering evenly over `taperM` before and after. */
function spread(values: Float32Array, { from, to }: Feature, amount: number, taperM: number): void {
  for (let i = Math.max(0, from - taperM); i < Math.min(values.length, to + taperM); i++) {
    values[i] += amount * Math.min(1, (i - from + taperM) / taperM, (to + taperM - i) / taperM);
  }
}
