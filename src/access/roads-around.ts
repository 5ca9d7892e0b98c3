import type { LonLat, PointM } from '../geo/index.ts';
import type { RoadIndex } from '../road/index.ts';
import { type Ground, heightAt } from '../terrain/index.ts';
import { azimuthOf } from '../units/index.ts';
import { type EdgeToward, edgeToward } from './edge-toward.ts';
import { type RoadFoot, roadFeet } from './road-feet.ts';
import { upSlope } from './up-slope.ts';

/** A road edge toward a place, as somebody would go over it or come to it. */
export interface RoadAround {
  readonly roadName: string | null;
  /** Index of a way of the route in the network, and the station on the route through it. */
  readonly way: number;
  readonly stationM: number;
  /** The edge, WGS 84. */
  readonly position: LonLat;
  /** Side of the drawing, and the true azimuth from the road to the place, degrees. */
  readonly side: 'left' | 'right';
  readonly sideAzimuthDeg: number;
  /** Height of the edge over the place, metres: least and most over the circle in which the place lies. */
  readonly dropM: readonly [least: number, most: number];
  /** Plan distance from the edge to the place, metres. */
  readonly distanceM: number;
  /** The way straight up the slope from the place, or from the rim of its circle, meets this road. */
  readonly traced: boolean;
  /** The ground between rises over the edge: nothing rolls down here, and no rope runs. */
  readonly riseBetween: boolean;
  /** The bench ends there in a drop, as far as the ground shows it. */
  readonly drops: boolean;
}

/** The roads around a place on a hillside. */
export interface RoadsAround {
  readonly at: LonLat;
  readonly heightM: number | null;
  readonly errorM: number;
  /** How far roads were looked for, metres. */
  readonly reachM: number;
  /** "beside": within 15 m of a road bench; "slope": farther off, traced up-slope. */
  readonly where: 'beside' | 'slope';
  /** Edges over the place, likeliest first. */
  readonly above: readonly RoadAround[];
  /** Roads under the place: ways in from below, nearest first. */
  readonly below: readonly RoadAround[];
  /** Roads at about the height of the place, nearest first. */
  readonly beside: readonly RoadAround[];
}

/** Within this of a bench a place belongs to the road, metres (the figure). */
const BESIDE_M = 15;
/** Roads are looked for this far, plus the error, where the ground reaches: a fall line is at most 300 m long. */
export const ROADS_REACH_M = 300;
/** Ground beyond the reach that benches there are read in, metres. */
export const ROADS_MARGIN_M = 80;
/** Heights nearer than this are not told apart, metres: half a bank. */
const LEVEL_M = 2;
/** Rise over the edge on the straight way that counts, metres. */
const RISE_M = 3;
/** Points on the rim of the circle in which the place lies. */
const RIM = 8;

/**
 * Every road edge above a place, every road below it. A phone's position lies at the wreck, below the road, and the nearest road in
 * plan is often the wrong leg: so roads are told by height, and those that the way straight up the slope meets stand first. `errorM` is
 * the radius of the circle in which the place lies; the ways up start at its middle and at its rim. The ground must reach `reachM` plus
 * `ROADS_MARGIN_M`; roads beyond are not told.
 */
export function roadsAround(
  ground: Ground,
  roads: RoadIndex,
  at: LonLat,
  errorM: number,
  reachM: number = ROADS_REACH_M + errorM,
): RoadsAround {
  const place = ground.plane.toLocal(at);
  const rim = Array.from({ length: errorM > 1 ? RIM : 0 }, (_, i) => {
    const angle = (2 * Math.PI * i) / RIM;
    return { x: place.x + errorM * Math.sin(angle), y: place.y + errorM * Math.cos(angle) };
  });
  const starts = [place, ...rim];
  const heights = starts.map(({ x, y }) => heightAt(ground, x, y)).filter((z) => !Number.isNaN(z));
  const ways = starts.map((start) => upSlope(ground, start, reachM));
  const feet = roadFeet(roads, ground.plane, place, reachM, ways);
  const found = feet.flatMap((foot) => {
    const edge = edgeToward(ground, roads, foot, place);
    return edge && heights.length > 0 ? [roadAround(ground, foot, edge, place, heights)] : [];
  });
  const least = ({ dropM: [low, high] }: RoadAround): number => (low + high) / 2;
  const nearness = (a: RoadAround, b: RoadAround): number => a.distanceM - b.distanceM;
  const heightM = heightAt(ground, place.x, place.y);
  return {
    at,
    heightM: Number.isNaN(heightM) ? null : heightM,
    errorM,
    reachM,
    where: found.some(({ distanceM }) => distanceM <= BESIDE_M) ? 'beside' : 'slope',
    above: found
      .filter((one) => least(one) > LEVEL_M)
      .sort(
        (a, b) =>
          Number(a.riseBetween) - Number(b.riseBetween) || Number(b.traced) - Number(a.traced) || nearness(a, b),
      ),
    below: found.filter((one) => least(one) < -LEVEL_M).sort(nearness),
    beside: found.filter((one) => Math.abs(least(one)) <= LEVEL_M).sort(nearness),
  };
}

function roadAround(
  ground: Ground,
  { route, stationM, at: foot, traced }: RoadFoot,
  edge: EdgeToward,
  place: PointM,
  heights: readonly number[],
): RoadAround {
  const dx = place.x - edge.at.x;
  const dy = place.y - edge.at.y;
  const distanceM = Math.hypot(dx, dy);
  const leg = route.legs.find(({ toM }) => stationM <= toM) ?? route.legs.at(-1)!;
  // Told as the way itself is drawn, whichever way round the route was walked here.
  const flipped = leg.reversed;
  return {
    roadName: route.name,
    way: leg.way,
    stationM: flipped ? route.lengthM - stationM : stationM,
    position: ground.plane.toLonLat(edge.at),
    side: (edge.side === 'right') === flipped ? 'left' : 'right',
    sideAzimuthDeg: azimuthOf(place.x - foot.x, place.y - foot.y),
    dropM: [edge.heightM - Math.max(...heights), edge.heightM - Math.min(...heights)],
    distanceM,
    traced,
    riseBetween: risesBetween(ground, edge, dx, dy, distanceM),
    drops: edge.kind === 'drop',
  };
}

function risesBetween(ground: Ground, edge: EdgeToward, dx: number, dy: number, distanceM: number): boolean {
  const steps = Math.ceil(distanceM / 2);
  for (let i = 1; i < steps; i++) {
    const z = heightAt(ground, edge.at.x + (dx * i) / steps, edge.at.y + (dy * i) / steps);
    if (z > edge.heightM + RISE_M) return true;
  }
  return false;
}
