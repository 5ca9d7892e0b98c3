import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import {
  calibrate,
  indexRoads,
  MILE_M,
  type MilePost,
  mileAt,
  placesOfMile,
  positionOnRoute,
  type Route,
  roadAt,
} from '../../src/road/index.ts';

const plane = localPlane({ lon: -128, lat: 44 });

/** A route 10 miles long that zigzags east, from one way. */
function road(): Route {
  const line: number[] = [];
  for (let i = 0; i <= 160; i++) {
    const { lon, lat } = plane.toLonLat({ x: i * 100, y: i % 2 === 0 ? 0 : 30 });
    line.push(lon, lat);
  }
  const index = indexRoads({
    ways: [{ id: 'way/1', name: 'Long Road', line: Float64Array.from(line), tags: {} }],
    features: [],
  });
  const place = roadAt(index, { lon: line[0]!, lat: line[1]! });
  if (!place.ok) throw place.error;
  return place.value.route;
}
const route = road();
const post = (mile: number, stationM: number): MilePost => ({ mile, at: positionOnRoute(route, stationM) });
const even = [0, 1, 2, 3, 4, 5].map((mile) => post(mile, 200 + mile * MILE_M));

describe('mile markers', () => {
  it('a mile is 5,280 feet', () => {
    expect(MILE_M).toBeCloseTo(1609.344, 9);
  });

  it('shares the mile out between neighbours, both ways round', () => {
    const calibration = calibrate(route, even);
    expect(calibration.stretches.map(({ kind }) => kind)).toEqual(['even', 'even', 'even', 'even', 'even']);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), (mile) => {
        const places = placesOfMile(route, calibration, mile);
        if (!places.ok) throw places.error;
        const [place] = places.value;
        // Station by arithmetic: the posts were put there.
        expect(Math.abs(place!.stationM - (200 + mile * MILE_M))).toBeLessThan(0.05);
        const back = mileAt(calibration, place!.stationM);
        if (!back.ok) throw back.error;
        expect(Math.abs(back.value.mile - mile)).toBeLessThan(1e-4);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('guesses nothing beyond the first and the last post', () => {
    const calibration = calibrate(route, even);
    const beyond = placesOfMile(route, calibration, 5.01);
    expect(beyond.ok ? null : beyond.error.message).toBe(
      'Long Road has no mile 5.01: its markers run from 0 to 5, and nothing is guessed beyond them or across a break.',
    );
    expect(placesOfMile(route, calibration, -0.01).ok).toBe(false);
    expect(placesOfMile(route, calibration, 5).ok).toBe(true);
    expect(mileAt(calibration, 199).ok).toBe(false);
    expect(mileAt(calibration, 200 + 5 * MILE_M + 1).ok).toBe(false);
    expect(placesOfMile(route, calibrate(route, [even[0]!]), 0).ok).toBe(false);
  });

  it('tells a gap and a jump, and how far off the place may be', () => {
    // Posts 2 and 3 are missing; from post 4 on the road is 400 m shorter than posted.
    const posts = [post(0, 0), post(1, MILE_M), post(4, 4 * MILE_M), post(5, 5 * MILE_M - 400)];
    const calibration = calibrate(route, posts);
    expect(calibration.stretches.map(({ kind }) => kind)).toEqual(['even', 'gap', 'jump']);
    const gap = placesOfMile(route, calibration, 2.5);
    expect(gap.ok && gap.value[0]!.note).toBe(
      'No marker stands between 1 and 4: the place is shared out between them.',
    );
    const jump = placesOfMile(route, calibration, 4.5);
    expect(jump.ok && jump.value[0]!.note).toContain('which is not what they say');
    // All 400 m may lie on either side, and the post itself is off by 15 m.
    expect(jump.ok && jump.value[0]!.withinM).toBeCloseTo(415, 0);
    const atPost = placesOfMile(route, calibration, 4);
    expect(atPost.ok && [atPost.value.length, atPost.value[0]!.note]).toEqual([1, null]);
  });

  it('a number that the road carries twice is two places', () => {
    // The numbers start anew at mile 3: 0 1 2 3 | 0 1 2.
    const posts = [0, 1, 2, 3].map((mile) => post(mile, mile * MILE_M));
    const anew = [0, 1, 2].map((mile) => post(mile, 3 * MILE_M + 300 + mile * MILE_M));
    const places = placesOfMile(route, calibrate(route, [...posts, ...anew]), 1);
    if (!places.ok) throw places.error;
    const stations = places.value.map(({ stationM }) => Math.round(stationM));
    expect(stations).toContain(Math.round(MILE_M));
    expect(stations).toContain(Math.round(4 * MILE_M + 300));
    expect(stations).toEqual([...stations].sort((a, b) => a - b));
  });

  it('markers that fall along the drawing read the same', () => {
    const falling = [5, 4, 3].map((mile, i) => post(mile, 100 + i * MILE_M));
    const place = placesOfMile(route, calibrate(route, falling), 4.25);
    expect(place.ok && Math.abs(place.value[0]!.stationM - (100 + 0.75 * MILE_M))).toBeLessThan(0.05);
  });

  it('sets aside a post that stands off the road, and one read twice', () => {
    const { lon, lat } = positionOnRoute(route, 1000);
    const away = { mile: 9, at: { lon, lat: lat + 0.002 } };
    const calibration = calibrate(route, [...even, away, even[2]!]);
    expect(calibration.off.map(({ mile, awayM }) => [mile, awayM > 40])).toEqual([[9, true]]);
    expect(calibration.same.map(({ mile }) => mile)).toEqual([2]);
    expect(calibration.stretches).toHaveLength(5);
  });
});
