import { describe, expect, it } from 'vitest';
import type { Mark } from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import { indexRoads } from '../../src/road/index.ts';
import {
  completeStudy,
  type GroundWork,
  runStudy,
  type Study,
  type StudyInputs,
  workUpGround,
} from '../../src/study/index.ts';
import { hillside, roadNetwork, studyInputs } from '../helpers/hillside.ts';

const plane = localPlane({ lon: -128, lat: 44 });
const slope = { belowDeg: 33, lengthM: 30, aboveDeg: 30 };
const inputs = studyInputs(hillside(slope));

function study(given: StudyInputs): Study {
  const result = runStudy(given);
  if (!result.ok) throw result.error;
  return result.value;
}

function ground(given: StudyInputs): GroundWork {
  const result = workUpGround(given);
  if (!result.ok) throw result.error;
  return result.value;
}

const codes = (s: Study): string[] => s.warnings.map(({ code }) => code);
const s = study(inputs);

/** Every key under a value, with the indices of lists left out. */
function keysOf(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((item) => keysOf(item, path));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => [`${path}${key}`, ...keysOf(inner, `${path}${key}.`)]);
}

describe('a study with layouts', () => {
  it('has layouts, a raise, a closure, arrivals and calls', () => {
    expect(s.layouts.length).toBeGreaterThan(1);
    expect(s.layouts.map(({ rank }) => rank)).toEqual(s.layouts.map((_, i) => i + 1));
    expect(s.ways[0]).toMatchObject({ kind: 'raise', rank: 1, people: s.layouts[0].people.leastRaise });
    expect(s.closure!.lanesBlocked).toBe(s.layouts[0].lanesBlocked);
    expect(s.arriving.map(({ atMin }) => atMin)).toEqual([0, 8, 9, 10, 12, 25]);
    expect(s.arriving[0]).toMatchObject({ unit: 'Engine 1', kit: ['Engine rope kit'], ropesM: [60, 60] });
    expect(s.call.map(({ who }) => who)).toContain('Police or road department');
  });

  it('has every field of the contract in every layout, spot and way', () => {
    const keys = new Set(keysOf(s));
    const names = (under: string, list: string): string[] => list.split(' ').map((name) => `${under}.${name}`);
    expect([...keys]).toEqual(
      expect.arrayContaining([
        ...names('spots', 'id apparatus lengthM widthM lon lat headingDeg stationM offsetM gradeDeg crossfallDeg'),
        ...names('spots', 'edgeClearanceM lanesBlocked holdKn use problems'),
        ...names('layouts', 'id kind anchor turn points lines contacts haulFieldM throwM raiseM pulls resets'),
        ...names('layouts', 'liftedByHandM mechanicalAdvantage system tensionKn team walkM regripsPerPull ropeM fits'),
        ...names('layouts', 'lanesBlocked turnAngleDeg keepOut people forces minutes rank why'),
        ...names('layouts.points', 'edge turn anchor belayAnchor'),
        ...names('layouts.lines.main', 'anchor deviceAt captureAt turn'),
        ...names('layouts.lines.belay', 'anchor deviceAt runM sharesAnchorWith'),
        ...names('layouts.tensionKn', 'walking hanging held belay'),
        ...names('layouts.team', 'walking allHang sustained handsAtOnce'),
        ...names('layouts.fits', 'firstArriving firstAlarm mutualAid short'),
        ...names('layouts.people', 'contact leastLower leastRaise full roles'),
        ...names('layouts.forces', 'at kind kn towardDeg capacityKn factor required ok'),
        ...names('layouts.minutes.parts', 'closure rig lower package raise wait'),
        ...names('ways', 'kind ropeM people minutes meets rank why'),
        ...names('closure', 'lanesBlocked taperM advanceSignsM stoppingSightM sightM'),
        ...names('arriving', 'atMin people kit unit'),
        ...names('call', 'who why phone radio'),
      ]),
    );
    expect(JSON.stringify(s)).not.toMatch(/NaN|Infinity|undefined/);
    expect(JSON.parse(JSON.stringify(s))).toEqual(s);
  });

  it('names in its layouts only spots and marks that it lists, and a belay anchor in each', () => {
    const known = new Set([...s.spots.map(({ id }) => id), ...s.marks.map(({ id }) => id)]);
    for (const { anchor, turn, lines } of s.layouts) {
      for (const id of [anchor, lines.belay.anchor, ...(turn ? [turn] : [])]) expect(known).toContain(id);
    }
  });

  it('measures the haul field between the points that it gives', () => {
    for (const { points, haulFieldM } of s.layouts) {
      const from = plane.toLocal(points.turn ?? points.edge);
      const to = plane.toLocal(points.anchor);
      expect(Math.abs(Math.hypot(to.x - from.x, to.y - from.y) - haulFieldM)).toBeLessThan(0.01);
    }
  });

  it('gives every layout its reasons: formula, inputs, source', () => {
    for (const { reasons } of s.layouts) {
      expect(reasons.length).toBeGreaterThan(5);
      for (const { formula, source } of reasons) expect(formula && source).toBeTruthy();
    }
  });

  it('says where the numbers of layouts, ways and arrivals come from, and that the fleet is the shipped one', () => {
    expect(s.origins['layouts.minutes']!.how).toBe('assumed');
    expect(s.origins['layouts.haulFieldM']!.how).toBe('computed');
    expect(codes(s)).toContain('default-fleet');
    const own = study({ ...inputs, resources: { ...inputs.resources, how: 'book' } });
    expect(codes(own)).not.toContain('default-fleet');
    expect(own.origins['layouts.minutes']!.how).toBe('typed');
  });
});

describe('the two steps of a study', () => {
  const work = ground(inputs);

  it('come to the same as one', () => {
    expect(completeStudy(work, inputs)).toEqual(s);
  });

  it('come to the same where the weather changes in between', () => {
    const wet = { ...inputs, conditions: { ...fairConditions, wet: true } };
    expect(completeStudy(work, wet)).toEqual(study(wet));
  });

  it('work everything out around a pinned spot, which keeps its id', () => {
    const first = s.layouts[0];
    const anchor = first.anchor.startsWith('S:') ? first.anchor : first.turn!;
    const pinned = completeStudy(work, { ...inputs, pins: { anchor } });
    expect(pinned.spots.find(({ id }) => id === anchor)).toMatchObject({ pinned: true });
    for (const layout of pinned.layouts) expect(layout.anchor).toBe(anchor);
  });

  it('still list a pinned spot that cannot work, and say why', () => {
    const pinned = completeStudy(work, { ...inputs, pins: { anchor: 'S:E1:4000:60:90' } });
    const spot = pinned.spots.find(({ id }) => id === 'S:E1:4000:60:90')!;
    expect(spot).toMatchObject({ pinned: true, workable: false });
    expect(spot.problems.some(({ severity }) => severity === 'unmet')).toBe(true);
  });
});

describe('the ways of a study', () => {
  const low = studyInputs(hillside({ belowDeg: 18, lengthM: 14, aboveDeg: 20 }));

  it('lead with a carry on a short low slope, and the sentence says so', () => {
    const carried = study(low);
    expect(carried.ways[0]).toMatchObject({ kind: 'carry', bearers: 6, people: { count: 8, atMin: 8 } });
    expect(carried.sentence).toContain('Six carry, one line, no haul: 8 people at 8 min');
    expect(carried.ways.map(({ kind }) => kind)).toContain('raise');
  });

  it('carry nothing where no anchor holds the line: on ice, with apparatus alone', () => {
    const ice = study({ ...low, conditions: { ...fairConditions, ice: true } });
    expect(ice.ways.map(({ kind }) => kind)).not.toContain('carry');
  });

  it('lead with lowering to a road below that the descent meets, which is named', () => {
    const { ways } = roadNetwork();
    const below = [-390, 390].flatMap((x) => {
      const { lon, lat } = plane.toLonLat({ x, y: -36 });
      return [lon, lat];
    });
    const lower = {
      id: 'way/2',
      name: 'Old Quarry Spur',
      line: Float64Array.from(below),
      tags: { highway: 'tertiary' },
    };
    const roads = indexRoads({ ways: [...ways, lower], features: [] });
    const lowered = study(studyInputs(hillside({ belowDeg: 34, lengthM: 60, aboveDeg: 30 }), { roads }));
    const [first, second] = lowered.ways;
    expect(first).toMatchObject({ kind: 'lower', reachedBy: 'vehicle', people: { count: 8 } });
    // The near side of the road, 3 m from its middle, is 29 m out from the edge.
    expect(first.meets).toMatch(/^an ambulance on Old Quarry Spur, 11[4-6] ft down$/);
    expect(second.kind).toBe('raise');
    expect(lowered.sentence).toContain('Lower to an ambulance on Old Quarry Spur');
  });

  it('lower a marked patient to a road below, never to one above', () => {
    const { ways } = roadNetwork();
    const at = (y: number) =>
      Float64Array.from([-390, 390].flatMap((x) => [plane.toLonLat({ x, y }).lon, plane.toLonLat({ x, y }).lat]));
    const road = (y: number) => ({ id: 'way/2', name: 'Old Quarry Spur', line: at(y), tags: { highway: 'tertiary' } });
    const toward = (roadY: number, patientY: number) =>
      study(
        studyInputs(hillside({ belowDeg: 34, lengthM: 60, aboveDeg: 30 }), {
          roads: indexRoads({ ways: [...ways, road(roadY)], features: [] }),
          patient: plane.toLonLat({ x: 0, y: patientY }),
        }),
      );
    const below = toward(-36, -24);
    expect(below.descent!.horizontalM).toBeCloseTo(20, 0);
    expect(below.ways[0].meets).toMatch(/^an ambulance on Old Quarry Spur, 11[4-6] ft down$/);
    expect(below.ways[0].why.join(' ')).not.toContain('Only for a patient above');
    expect(toward(-24, -40).ways.map(({ kind }) => kind)).not.toContain('lower');
  });
});

describe('places without a haul', () => {
  it.each<[string, StudyInputs]>([
    ['coarse cells', studyInputs(hillside({ ...slope, lengthM: 120, cellM: 10 }))],
    ['a surface model', studyInputs(hillside({ ...slope, info: { kind: 'surface' } }))],
    ['the uphill side', { ...inputs, side: 'left' }],
    ['a bridge', studyInputs(hillside(slope), { roads: indexRoads(roadNetwork({}, { bridge: 'yes' })) })],
  ])('%s give no spot, no layout, no way and no closure', (_what, given) => {
    const none = study(given);
    expect([none.spots, none.layouts, none.ways, none.closure]).toEqual([[], [], [], null]);
  });

  it('a coarse study does not say that ground is level as if it had been measured', () => {
    const flat = study(studyInputs(hillside({ belowDeg: 1, lengthM: 20, aboveDeg: 1, cellM: 10 })));
    expect(flat.sentence).toMatch(/^No drop edge/);
    expect(flat.sentence).not.toContain('stays level');
  });
});

describe('what a study calls for', () => {
  const line = (kind: Mark['kind'], y: number): Mark => ({
    id: kind,
    kind,
    name: null,
    geometry: {
      type: 'LineString',
      coordinates: [-40, 40].map((x) => plane.toLonLat({ x, y })).map(({ lon, lat }) => [lon, lat]),
    },
    trunkDiameterM: null,
    heightM: null,
  });
  const who = (given: StudyInputs): string[] => study(given).call.map((call) => call.who);

  it('calls the power company for wires near, not for wires far', () => {
    expect(who({ ...inputs, marks: [line('wire', -20)] })).toContain('Power company');
    expect(who({ ...inputs, marks: [line('wire', 100)] })).not.toContain('Power company');
    expect(study({ ...inputs, marks: [line('wire', -20)] }).marks).toMatchObject([{ id: 'wire', kind: 'wire' }]);
  });

  it('calls water rescue for water at the end', () => {
    expect(who({ ...inputs, marks: [line('water', -24)] })).toContain('Water rescue team');
    expect(who(inputs)).not.toContain('Water rescue team');
  });

  it('calls mutual aid where too few come, and a rope team where no rope reaches', () => {
    const few = { ...inputs.resources, arrivals: inputs.resources.arrivals.slice(0, 2) };
    expect(who({ ...inputs, resources: few })).toContain('Mutual aid');
    expect(who(studyInputs(hillside({ ...slope, lengthM: 110 })))).toContain('Technical rope team');
  });

  it('calls the rope team for a place planned as high, and hides nothing from the JSON', () => {
    const high = study(studyInputs(hillside({ ...slope, belowDeg: 50 })));
    expect(high.call.map((call) => call.who)).toContain('Technical rope team');
    for (const { people } of high.layouts) expect(people.contact).toBeNull();
  });
});

it('more patients take longer', () => {
  const two = study({ ...inputs, patients: 2 });
  expect(two.ways[0].minutes.from!).toBeGreaterThan(s.ways[0].minutes.from!);
  expect(two.sentence).toContain('for 2 patients, one cycle each');
});

it('tells where nobody comes', () => {
  const alone = study({ ...inputs, resources: { ...inputs.resources, arrivals: [] } });
  expect(alone.layouts).toEqual([]);
  expect(codes(alone)).toEqual(expect.arrayContaining(['no-arrivals', 'no-haul']));
  expect(alone.call.map((call) => call.who)).toEqual(expect.arrayContaining(['Technical rope team', 'Mutual aid']));
});
