import type { Mark } from '../book/index.ts';
import { type Ground, heightAt } from '../terrain/index.ts';
import { ok, type Result, refuse, UserError } from '../units/index.ts';
import { findBench } from './bench.ts';
import { benchInput } from './bench-input.ts';
import type { Bench } from './bench-types.ts';
import type { RoadIndex, RoadPlace } from './nearest.ts';
import { UNDER } from './structures.ts';
import { defaultSetbacks, type Setbacks } from './usable.ts';

/** How far along the road, either way, a study looks, metres. */
export const BENCH_HALF_M = 150;

/**
 * The road bench 150 m each way of a place beside a road, on the ground's own plane. Refuses where the elevation data have
 * no heights at the place. Marked and mapped barriers and walls count for the usable offsets.
 */
export function benchAround(
  roads: RoadIndex,
  place: RoadPlace,
  ground: Ground,
  marks: readonly Mark[],
  setbacks: Setbacks = defaultSetbacks,
): Result<Bench> {
  const { stationM, position } = place;
  const at = ground.plane.toLocal(position);
  const bench = Number.isNaN(heightAt(ground, at.x, at.y))
    ? null
    : findBench(
        benchInput(roads, place.route, ground, marks, setbacks, stationM, BENCH_HALF_M),
        stationM - BENCH_HALF_M,
        stationM + BENCH_HALF_M,
      );
  const i = bench ? Math.min(bench.count - 1, Math.max(0, Math.round(stationM) - bench.firstStationM)) : -1;
  if (bench && (bench.under[i] === UNDER.structure || !Number.isNaN(bench.heightM[i]))) return ok(bench);
  return refuse(
    new UserError(
      'no-ground',
      `The elevation data have no heights at the road at ${position.lon.toFixed(6)}, ${position.lat.toFixed(6)} (longitude, latitude); add a file that covers it.`,
    ),
  );
}
