import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { fairConditions, holdKn } from '../../src/rigging/index.ts';
import { readRoadTags } from '../../src/road/index.ts';
import {
  attachmentPlaces,
  blockedLanes,
  corners,
  judgeSpot,
  laneUse,
  leastHoldKn,
  nearestElement,
  placeOfSpotId,
  placeOnBench,
  spotId,
  standingRoom,
  strip,
} from '../../src/spots/index.ts';
import { gravel, makeBench } from './made-bench.ts';
import { engine, hazard, lightRig, roadside, spotsFor, wet } from './roadside.ts';

// The road runs east along y = 0 from x = 0; right is south, where the ground falls 4 m off; left is a cut 4 m off.
const site = { stationM: 75, side: 1 } as const;
const judge = (ground: ReturnType<typeof roadside>, stationM: number, offsetM: number, headingDeg = 90) =>
  judgeSpot(standingRoom(ground, engine), { stationM, offsetM, headingDeg }, defaultRates);
const codes = (...of: Parameters<typeof judge>): string[] => judge(...of).problems.map(({ code }) => code);

describe('footprint and place', () => {
  it('gives corners from the cab round', () => {
    const c = corners({ x: 10, y: 5, headingDeg: 90, lengthM: 8, widthM: 2 });
    [14, 6, 14, 4, 6, 4, 6, 6].forEach((value, k) => {
      expect(c[k]).toBeCloseTo(value, 12);
    });
  });

  it('ties at both ends, on the frame rails', () => {
    const at = attachmentPlaces(engine, { x: 0, y: 0, headingDeg: 0, lengthM: 10, widthM: 3 });
    expect(at.map(({ point, x, y }) => [point.end, Math.round(x * 10), Math.round(y * 10)])).toEqual([
      ['front', -4, 50],
      ['front', 4, 50],
      ['rear', -4, -50],
      ['rear', 4, -50],
    ]);
  });

  it('places points on a bend where a dense search of the arc finds them', () => {
    const radius = 40;
    const bench = makeBench({ lengthM: 60, curvature: () => 1 / radius });
    const out = new Float64Array(2);
    for (let s = 3.3; s < 57; s += 3.7) {
      for (const q of [-6, -1.2, 0, 3, 5.5]) {
        const angle = s / radius;
        const r = radius + q;
        const [x, y] = [r * Math.sin(angle), radius - r * Math.cos(angle)];
        expect(placeOnBench(bench, x, y, nearestElement(bench, x, y), out)).toBe(true);
        expect(out[0]).toBeCloseTo(s, 2);
        expect(out[1]).toBeCloseTo(q, 2);
      }
    }
    expect(placeOnBench(bench, -3, 0, 0, out)).toBe(false);
  });

  it('reads its ids back', () => {
    const place = { apparatusId: 'E1:a', stationM: 812.3, offsetM: -2.4, headingDeg: 359 };
    expect(spotId(place)).toBe('S:E1:a:8123:-24:359');
    expect(placeOfSpotId(spotId(place))).toEqual(place);
    const fine = { ...place, headingDeg: 57.3 };
    expect(spotId(fine)).toBe('S:E1:a:8123:-24:57.3');
    expect(placeOfSpotId(spotId(fine))).toEqual(fine);
    expect(spotId({ ...place, offsetM: -0.01, headingDeg: 359.98 })).toBe('S:E1:a:8123:0:0');
    expect(() => placeOfSpotId('S:E1:8123:0:360')).toThrow(/is no spot id/);
    expect(() => placeOfSpotId('E1:5')).toThrow(/is no spot id/);
  });
});

// Setbacks: common practice, no source. The engine is 2.97 m wide: its wheels stand 1.49 m off its middle.
describe('setbacks', () => {
  it('1.5 m on the carriageway', () => {
    expect(codes(roadside(makeBench()), 60, 1)).toEqual([]);
    expect(codes(roadside(makeBench()), 60, 1.1)).toEqual(['setback']);
  });

  it('0.5 m from a cut', () => {
    expect(codes(roadside(makeBench()), 60, -2)).toEqual(['shoulder']);
    expect(codes(roadside(makeBench()), 60, -2.1)).toEqual(['setback', 'shoulder']);
  });

  it('2.5 m on wet gravel, and on wet gravel alone', () => {
    const wide = makeBench({ right: { widthM: () => 5 } });
    expect(codes(roadside(wide, { traits: gravel }), 60, 1.4)).toEqual([]);
    expect(codes(roadside(wide, { traits: gravel, conditions: wet }), 60, 1.4)).toEqual(['setback']);
    expect(codes(roadside(wide, { conditions: wet }), 60, 1.4)).toEqual([]);
    const silent = readRoadTags({ highway: 'unclassified' });
    expect(codes(roadside(wide, { traits: silent, conditions: wet }), 60, 1.4)).toEqual(['setback']);
  });

  it('2.5 m off the carriageway for an engine, 1.5 m for a light rig, doubled when wet', () => {
    const turnout = makeBench({ right: { widthM: () => 12 } });
    const limit = (apparatus: typeof engine, conditions = fairConditions): number =>
      12 - standingRoom(roadside(turnout, { conditions }), apparatus).rightM[60];
    expect([limit(engine), limit(lightRig), limit(engine, wet), limit(lightRig, wet)]).toEqual([2.5, 1.5, 5, 3]);
  });

  it('2.5 m where the lip is over 45°, or a wall or step holds the edge up', () => {
    const lip = (slope: number) => roadside(makeBench({ right: { widthM: () => 4, slope } }));
    expect(codes(lip(-0.98), 60, 1)).toEqual([]);
    expect(codes(lip(-1.02), 60, 1)).toEqual(['setback']);
    for (const kind of ['wall', 'step'] as const) {
      const walled = roadside(makeBench(), { hazards: [hazard(kind, 'line', 40, -5, 80, -5)] });
      expect(judge(walled, 60, 1).problems[0]!.text).toMatch(/steep or walled below/);
      expect(judge(walled, 100, 1).workable).toBe(true);
    }
  });

  it('mid-road on a narrow bench, "check", never under 1.0 m', () => {
    const narrow = (half: number) =>
      roadside(makeBench({ left: { widthM: () => half }, right: { widthM: () => half } }));
    expect(codes(narrow(2.75), 60, 0)).toEqual(['narrow']);
    expect(codes(narrow(2.75), 60, 0.3)).toContain('setback');
    expect(codes(narrow(2.4), 60, 0)).toContain('setback');
    expect(spotsFor(narrow(2.4))).toEqual([]);
  });

  it('behind a barrier', () => {
    const railed = roadside(makeBench({ right: { widthM: () => 6, barrierM: 3 } }));
    expect(judge(railed, 60, 1.1).problems[0]!.text).toMatch(/barrier/);
    expect(judge(railed, 60, 0.9).workable).toBe(true);
  });

  it('asks for a check where the edge is not known well', () => {
    expect(codes(roadside(makeBench({ right: { widthM: () => 4, sigmaM: 0.5 } })), 60, 1)).toEqual(['edge-uncertain']);
  });
});

describe('what stands in the way', () => {
  const wide = makeBench({ right: { widthM: () => 12 } });

  it.each([
    ['soft ground', 'point', [60, 0]],
    ['culvert', 'line', [60, 10, 60, -20]],
    ['wall', 'line', [50, 0, 70, 0]],
    ['wire', 'line', [40, 20, 80, -25]],
    ['pole', 'point', [62, -1]],
    ['gate', 'line', [58, 2, 58, -2]],
    ['tree', 'point', [55.5, 1]],
    ['barrier', 'line', [50, 0, 70, -1]],
    ['water', 'area', [0, 20, 120, 20, 120, -20, 0, -20, 0, 20]],
  ] as const)('%s refuses a spot and is named', (kind, shape, xy) => {
    const spot = judge(roadside(wide, { hazards: [hazard(kind, shape, ...xy)] }), 60, 0);
    expect(spot.workable).toBe(false);
    expect(spot.problems.find(({ code }) => code === 'mark')?.markId).toBe(kind);
  });

  it('firm ground opens the shoulder where it holds the whole outline, and only there', () => {
    const patch = hazard('firm ground', 'area', 50, -2.9, 70, -2.9, 70, -12, 50, -12, 50, -2.9);
    expect(codes(roadside(wide), 60, 6)).toEqual(['shoulder']);
    expect(codes(roadside(wide, { hazards: [patch] }), 60, 6)).toEqual([]);
    expect(codes(roadside(wide, { hazards: [patch] }), 66, 6)).toEqual(['shoulder']);
  });

  it('grade over 6° and crossfall over 5° refuse, from 3° either is a check, unknown refuses', () => {
    const on = (gradeDeg: number, crossfallDeg: number) =>
      codes(roadside(makeBench({ gradeDeg: () => gradeDeg, crossfallDeg: () => crossfallDeg })), 60, 0);
    expect([on(2.9, 2.9), on(5.9, 0), on(0, -4.9)]).toEqual([[], ['slope-check'], ['slope-check']]);
    for (const [g, c] of [
      [6.1, 0],
      [0, -5.1],
      [Number.NaN, 0],
    ] as const)
      expect(on(g, c)).toContain('slope');
  });

  it('nothing stands where the bench before it is too narrow to drive, unless the other end is open', () => {
    const pinch = (at: number[]) =>
      makeBench({ right: { widthM: (s) => (at.includes(s) ? -0.2 : 5) }, left: { kind: 'rise', widthM: () => 4 } });
    expect(codes(roadside(pinch([20])), 60, 0)).toEqual([]);
    expect(codes(roadside(pinch([20, 100])), 60, 0)).toEqual(['unreachable']);
  });

  it('keeps the edge of the site free, and apparatus that holds nothing 10 m to the side', () => {
    expect(codes(roadside(makeBench(), { site }), 75, 1)).toContain('edge-area');
    expect(codes(roadside(makeBench(), { site }), 82, 1)).toEqual([]);
    const bare = { ...engine, attachments: [] };
    const at = (stationM: number) =>
      judgeSpot(
        standingRoom(roadside(makeBench(), { site }), bare),
        { stationM, offsetM: 0, headingDeg: 90 },
        defaultRates,
      );
    expect(at(85).workable).toBe(false);
    expect(at(91)).toMatchObject({ workable: true, use: 'blocker' });
  });

  it('gives no spot on an assumed bench, and keeps a pin that cannot stand with its id', () => {
    expect(spotsFor(roadside({ ...makeBench(), how: 'assumed' }))).toEqual([]);
    const pinned = judge(roadside(makeBench()), 400, 0);
    expect(pinned).toMatchObject({ id: 'S:E1:4000:0:90', workable: false, holdKn: 0 });
    expect(pinned.lanes.blocked).toBe(2);
  });
});

describe('lanes', () => {
  const bench = makeBench({ right: { widthM: () => 12 } });
  const use = (offset: number, tags: Record<string, string> = {}) =>
    laneUse(bench, readRoadTags({ highway: 'tertiary', ...tags }), strip(50, -offset, 62, -offset, 2), 55);

  it('counts each lane that a corridor reaches into', () => {
    expect([use(-1.9).taken, use(0).taken, use(1.9).taken, use(4.1).taken]).toEqual([[0], [0, 1], [1], []]);
    expect(use(3.5).blocked).toBe(1);
    expect(use(4.1).takesM).toBeNull();
    expect(use(0, { lanes: '4', width: '14' }).taken).toEqual([1, 2]);
  });

  it('counts a lane once that several footprints take', () => {
    expect(blockedLanes([use(-1.9), use(-2), use(0)])).toBe(2);
    expect(blockedLanes([use(1.9), use(4.1)])).toBe(1);
  });

  it('follows the road found, not the line as drawn', () => {
    const shifted = makeBench({ right: { widthM: () => 12 }, shiftM: 5 });
    expect(laneUse(shifted, readRoadTags({ highway: 'tertiary' }), strip(50, 0, 62, 0, 2), 55).taken).toEqual([]);
  });

  it('takes all lanes where nobody can tell', () => {
    expect(laneUse(bench, readRoadTags({ highway: 'tertiary' }), strip(140, 0, 170, 0, 2), 145).blocked).toBe(2);
  });
});

describe('hold and use', () => {
  it('is the least over all directions of pull', () => {
    for (const [x, y] of [
      [0, 0],
      [0.05, -0.02],
      [-0.08, 0.03],
    ] as const) {
      const least = leastHoldKn(engine, { x, y }, fairConditions, defaultRates);
      let found = Number.POSITIVE_INFINITY;
      for (let a = 0; a < 360; a++) {
        const pull = { x: Math.cos((a * Math.PI) / 180), y: Math.sin((a * Math.PI) / 180) };
        found = Math.min(found, holdKn(15_000, defaultRates.tireFriction, defaultRates.brakedShare, { x, y }, pull));
      }
      expect(least).toBeLessThanOrEqual(found + 1e-9);
      expect(found - least).toBeLessThan(0.01);
    }
  });

  // 09 check value by statics (derived): 15 t, 2 % across and 8 % along, pulled down the fall.
  it('agrees with the fall of grade and crossfall together', () => {
    const bench = makeBench({ gradeDeg: () => 4.574, crossfallDeg: () => 1.146 });
    const { fall, holdKn: least } = judge(roadside(bench), 60, 0);
    expect(Math.hypot(fall!.x, fall!.y)).toBeCloseTo(Math.hypot(0.08, 0.02), 4);
    expect(fall!.x).toBeLessThan(0);
    expect(fall!.y).toBeLessThan(0);
    expect(least).toBeGreaterThan(0);
    expect(least).toBeLessThan(13.77);
  });

  it('makes blockers of apparatus on ice or without a rated attachment, and turns and anchors of the others', () => {
    const ice = spotsFor(roadside(makeBench(), { conditions: { ...fairConditions, ice: true } }));
    expect(new Set(ice.map(({ use }) => use))).toEqual(new Set(['blocker']));
    const uses = spotsFor(roadside(makeBench(), { site }));
    expect(new Set(uses.map(({ use }) => use))).toEqual(new Set(['anchor', 'either', 'turn']));
    for (const { use, stationM } of uses) if (use === 'anchor') expect(Math.abs(stationM - 75)).toBeGreaterThan(8);
  });
});

describe('candidate spots', () => {
  it('come parallel either way round, at whole metres, with ids that lead back to them', () => {
    const ground = roadside(makeBench({ curvature: () => 1 / 60 }), { site });
    const spots = spotsFor(ground);
    expect(spots.length).toBeGreaterThan(200);
    expect(new Set(spots.map(({ id }) => id)).size).toBe(spots.length);
    const room = standingRoom(ground, engine);
    for (const spot of spots) expect(judgeSpot(room, placeOfSpotId(spot.id), defaultRates)).toEqual(spot);
  });

  it('stand nose-in where the width allows', () => {
    const wide = makeBench({ right: { widthM: () => 12 } });
    const headings = (bench: ReturnType<typeof makeBench>) =>
      new Set(spotsFor(roadside(bench)).map(({ footprint }) => footprint.headingDeg));
    expect(headings(wide)).toEqual(new Set([90, 270, 0, 180]));
    expect(headings(makeBench())).toEqual(new Set([90, 270]));
  });

  it('stand across the road where marks leave no parallel place', () => {
    // Two rails 3.6 m apart that run across the road at 30°.
    const rail = (side: number) =>
      hazard('barrier', 'line', 54.8 + 0.9 * side, 3 + 1.56 * side, 65.2 + 0.9 * side, -3 + 1.56 * side);
    const wide = makeBench({ left: { kind: 'rise', widthM: () => 6 }, right: { widthM: () => 7 } });
    const ground = roadside(wide, { hazards: [rail(1), { ...rail(-1), id: 'rail 2' }] });
    const here = spotsFor(ground).filter(({ stationM }) => stationM === 60);
    const across = here.map(({ footprint }) => Math.abs((footprint.headingDeg % 180) - 90));
    expect(new Set(across)).toEqual(new Set([30]));
  });
});
