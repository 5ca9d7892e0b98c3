import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import { type Bench, KIND } from '../../src/road/index.ts';
import { defaultSpotSettings, judgeSpot, type Spot, type StandingGround, standingRoom } from '../../src/spots/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { gravel, type MadeBench, makeBench, paved, randomMade } from './made-bench.ts';
import { engine, hazard, lightRig, roadside, spotsFor, wet } from './roadside.ts';

const settings = { ...defaultSpotSettings, reachM: 6 };
const site = { stationM: 45, side: 1 } as const;
const at = (made: MadeBench, more = {}) => roadside(makeBench(made), { settings, site, ...more });
const seeds = (count: number, from = 0): number[] => Array.from({ length: count }, (_, k) => from + k);

/** Points of an outline a quarter of a metre apart, by trigonometry of its own. */
function pointsOf({ footprint: { x, y, headingDeg, lengthM, widthM } }: Spot): [number, number][] {
  const a = (headingDeg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(a), Math.cos(a)];
  const points: [number, number][] = [];
  const add = (p: number, q: number): void => {
    const [ahead, right] = [p * lengthM, q * widthM];
    points.push([x + ahead * sin + right * cos, y + ahead * cos - right * sin]);
  };
  for (let u = 0; u <= 40; u++) {
    const along = u / 40 - 0.5;
    add(along, -0.5);
    add(along, 0.5);
    add(-0.5, along);
    add(0.5, along);
  }
  return points;
}

/** Station and offset on the arc that a made bench of constant curvature follows, in closed form. */
function onArc(curvature: number, x: number, y: number): { s: number; q: number } {
  if (Math.abs(curvature) < 1e-12) return { s: x, q: -y };
  const radius = 1 / curvature;
  const fromCentre = Math.hypot(x, y - radius);
  const angle = Math.atan2(Math.sign(radius) * x, Math.sign(radius) * (radius - y));
  return { s: angle * radius, q: Math.sign(radius) * (fromCentre - Math.abs(radius)) };
}

/** Least distance from a point to the ends of a bench as lines, on the sides where `falls` says so. */
function toEdges(bench: Bench, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { edgeX, edgeY, kind } of [bench.left, bench.right]) {
    for (let i = 0; i + 1 < bench.count; i++) {
      if (kind[i] !== KIND.drop && kind[i] !== KIND.bank) continue;
      const [dx, dy] = [edgeX[i + 1] - edgeX[i], edgeY[i + 1] - edgeY[i]];
      const t = Math.min(1, Math.max(0, ((x - edgeX[i]) * dx + (y - edgeY[i]) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(edgeX[i] + t * dx - x, edgeY[i] + t * dy - y));
    }
  }
  return least;
}

describe('a spot on 1,500 random roadsides', () => {
  it('never leaves the bench or its setbacks, measured on the formula the bench was made from', () => {
    let spots = 0;
    let benches = 0;
    const wrong: string[] = [];
    for (const seed of seeds(1500)) {
      const made = randomMade(seed);
      const random = seededRandom(seed + 1);
      const conditions = random.next() < 0.4 ? wet : fairConditions;
      const traits = random.next() < 0.4 ? gravel : paved;
      const apparatus = random.next() < 0.7 ? engine : lightRig;
      const found = spotsFor(at(made, { conditions, traits }), [apparatus]);
      if (found.length > 0) benches++;
      const bend = made.curvature!(0);
      const heavy = apparatus === engine;
      // Every fifth: the dense test costs more than the search.
      for (const spot of found.filter((_, k) => k % 5 === seed % 5)) {
        spots++;
        const checked = spot.problems.some(({ code }) => code === 'narrow');
        const firm = spot.problems.every(({ code }) => code !== 'shoulder');
        const half = traits.carriageway.valueM / 2;
        for (const [x, y] of pointsOf(spot)) {
          const { s, q } = onArc(bend, x, y);
          const fail = (what: string): void => {
            wrong.push(`${seed} ${spot.id} at ${s}, ${q}: ${what}`);
          };
          if (firm && Math.abs(q - made.shiftM!) > half + 0.01) fail('off the carriageway');
          for (const side of [made.left!, made.right!]) {
            const sign = side === made.left ? -1 : 1;
            const out = sign * q;
            const falls = side.kind === 'drop' || side.kind === 'bank';
            const greater = -side.slope! > 1 || out - sign * made.shiftM! > half + 0.01;
            const firmM = (conditions.wet ? 2 : 1) * (heavy ? 2.5 : 1.5);
            const roadM = conditions.wet && traits === gravel ? 2.5 : 1.5;
            const owed = !falls ? 0.5 : greater ? Math.max(roadM, firmM) : checked ? 1 : roadM;
            // Between stations a width is taken as straight; a made one bends where a turnout begins.
            if (!(side.widthM(s) - out > owed - 0.06)) fail('setback');
            if (side.barrierM! - out < -0.01) fail('barrier');
          }
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(benches).toBeGreaterThan(700);
    expect(spots).toBeGreaterThan(3000);
  }, 60_000);

  it('states its clearance as a plain search along the edges finds it', () => {
    for (const seed of seeds(60)) {
      const made = randomMade(seed);
      const bench = makeBench(made);
      for (const spot of spotsFor(at(made)).slice(0, 3)) {
        if (spot.edgeClearanceM === null) continue;
        const least = Math.min(...pointsOf(spot).map(([x, y]) => toEdges(bench, x, y)));
        expect(Math.abs(least - spot.edgeClearanceM)).toBeLessThan(0.02);
        expect(spot.edgeClearanceM).toBeGreaterThan(0.99);
      }
    }
  });

  it('never stands on soft ground, a culvert, a wall or under a wire', () => {
    const wrong: string[] = [];
    const off = { 'soft ground': 3, culvert: 1.5, wall: 0.5, wire: 3 } as const;
    for (const seed of seeds(400)) {
      const random = seededRandom(seed + 7);
      const kind = (Object.keys(off) as (keyof typeof off)[])[Math.floor(random.next() * 4)]!;
      const made = { ...randomMade(seed), curvature: () => 0 };
      const from = [35 + 20 * random.next(), 8 * random.next() - 4] as const;
      const to = [35 + 20 * random.next(), 16 * random.next() - 8] as const;
      const mark = kind === 'soft ground' ? hazard(kind, 'point', ...from) : hazard(kind, 'line', ...from, ...to);
      for (const { footprint } of spotsFor(at(made, { hazards: [mark] })).filter((_, k) => k % 5 === seed % 5)) {
        const a = (footprint.headingDeg * Math.PI) / 180;
        for (let t = 0; t <= 1; t += 0.02) {
          const last = kind === 'soft ground' ? from : to;
          const dx = from[0] + t * (last[0] - from[0]) - footprint.x;
          const dy = from[1] + t * (last[1] - from[1]) - footprint.y;
          const u = Math.abs(dx * Math.sin(a) + dy * Math.cos(a)) - footprint.lengthM / 2;
          const v = Math.abs(dx * Math.cos(a) - dy * Math.sin(a)) - footprint.widthM / 2;
          if (!(Math.max(u, v) > off[kind] - 1e-6)) wrong.push(`${seed} ${kind}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  }, 30_000);
});

describe('the search', () => {
  it('finds every metre that a search of all decimetres finds, and its outermost and least blocking place', () => {
    let metres = 0;
    for (const seed of seeds(60, 5000)) {
      const made = { ...randomMade(seed), gradeDeg: () => 1, crossfallDeg: () => 1 };
      const ground = at(made, { site: null });
      const room = standingRoom(ground, engine);
      const found = spotsFor(ground);
      for (let stationM = 30; stationM <= 60; stationM += 6) {
        const here = found.filter((spot) => spot.stationM === stationM);
        const azimuth = Math.round(90 - (made.curvature!(0) * stationM * 180) / Math.PI);
        const headingDeg = ((azimuth % 360) + 360) % 360;
        const all: Spot[] = [];
        for (let dm = -110; dm <= 110; dm++) {
          const spot = judgeSpot(room, { stationM, offsetM: dm / 10, headingDeg }, defaultRates);
          if (spot.workable) all.push(spot);
        }
        if (all.length === 0) continue;
        metres++;
        const most = (spots: Spot[]): number => Math.max(...spots.map(({ offsetM }) => offsetM));
        const least = (spots: Spot[]): number => Math.min(...spots.map(({ lanes }) => lanes.blocked));
        expect(here.length, `${seed} at ${stationM}`).toBeGreaterThan(0);
        expect(most(all) - most(here), `${seed} at ${stationM}`).toBeLessThanOrEqual(0.2);
        expect(least(here), `${seed} at ${stationM}`).toBeLessThanOrEqual(least(all));
      }
    }
    expect(metres).toBeGreaterThan(60);
  }, 30_000);
});

describe('worse never gives more', () => {
  /** In fair weather, for all that is worse: the room of a random roadside and the stations of its spots. */
  const fairly = new Map<number, { room: ReturnType<typeof standingRoom>; stations: ReadonlySet<number> }>();
  const fair = (seed: number, ground: StandingGround) => {
    const known = fairly.get(seed) ?? {
      room: standingRoom(ground, engine),
      stations: new Set(spotsFor(ground).map(({ stationM }) => stationM)),
    };
    fairly.set(seed, known);
    return known;
  };

  it.each([
    ['wet', { conditions: wet }],
    ['ice', { conditions: { ...fairConditions, ice: true } }],
    ['soft ground', { hazards: [hazard('soft ground', 'line', 30, -6, 60, -6)] }],
  ])(
    '%s adds no spot and no hold',
    (_, worse) => {
      const wrong: string[] = [];
      for (const seed of seeds(250)) {
        const made = randomMade(seed);
        const traits = seed % 2 === 0 ? gravel : paved;
        const { room, stations } = fair(seed, at(made, { traits }));
        for (const spot of spotsFor(at(made, { traits, ...worse }))) {
          const { stationM, offsetM, footprint } = spot;
          const before = judgeSpot(room, { stationM, offsetM, headingDeg: footprint.headingDeg }, defaultRates);
          const better = [
            !before.workable && 'workable',
            !(spot.holdKn <= before.holdKn) && `hold ${spot.holdKn} over ${before.holdKn}`,
            !(spot.problems.length >= before.problems.length) && 'fewer problems',
            !stations.has(stationM) && 'a station of its own',
          ].filter(Boolean);
          if (better.length > 0) wrong.push(`${seed} ${spot.id}: ${better}`);
        }
      }
      expect(wrong).toEqual([]);
    },
    30_000,
  );

  it('silence about the surface is no better than gravel', () => {
    for (const seed of seeds(60)) {
      const made = randomMade(seed);
      const ids = (traits: typeof paved) => spotsFor(at(made, { traits, conditions: wet })).map(({ id }) => id);
      expect(ids({ ...paved, paved: null })).toEqual(ids({ ...paved, paved: false }));
    }
  });
});

describe('more width', () => {
  it('never takes all spots away', () => {
    let some = 0;
    for (const seed of seeds(400)) {
      const made = randomMade(seed);
      const more = 2 * seededRandom(seed).next();
      const wider = (side: NonNullable<MadeBench['left']>) => ({
        ...side,
        widthM: (s: number) => side.widthM(s) + more,
      });
      if (spotsFor(at(made)).length === 0) continue;
      some++;
      expect(spotsFor(at({ ...made, left: wider(made.left!), right: wider(made.right!) })).length).toBeGreaterThan(0);
      expect(spotsFor(at({ ...made, right: wider(made.right!) })).length).toBeGreaterThan(0);
    }
    expect(some).toBeGreaterThan(150);
  }, 30_000);
});

describe('the same roadside twice', () => {
  it('gives the same spots', () => {
    for (const seed of seeds(30)) expect(spotsFor(at(randomMade(seed)))).toEqual(spotsFor(at(randomMade(seed))));
  });
});
