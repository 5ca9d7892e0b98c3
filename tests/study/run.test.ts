import { describe, expect, it } from 'vitest';
import type { Mark } from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { indexRoads } from '../../src/road/index.ts';
import { runStudy, type Study, type StudyInputs } from '../../src/study/index.ts';
import { BENCH_HALF_M, hillside, roadNetwork, studyInputs } from '../helpers/hillside.ts';

const plane = localPlane({ lon: -128, lat: 44 });
const at = (x: number, y: number) => plane.toLonLat({ x, y });

function study(inputs: StudyInputs): Study {
  const result = runStudy(inputs);
  if (!result.ok) throw result.error;
  return result.value;
}

const codes = (s: Study): string[] => s.warnings.map((warning) => warning.code);

describe('runStudy on a hillside that anyone can derive', () => {
  const slope = { belowDeg: 35, lengthM: 40, aboveDeg: 30 };
  const s = study(studyInputs(hillside(slope)));

  it('takes the side that drops and says which, in driving words', () => {
    expect(s.site.side).toBe('right');
    expect(s.site.sideAzimuthDeg).toBeCloseTo(180, 1);
    expect(s.site.sideWords).toBe('downhill side, south, right when driving east');
    expect(s.site.road).toMatchObject({ id: 'way/1', name: 'Cinder Grade Road' });
  });

  it('finds the edges of the bench and its width', () => {
    expect(s.edge!.offsetM).toBeCloseTo(BENCH_HALF_M, 1);
    expect(s.bench!.leftEdgeOffsetM).toBeCloseTo(-BENCH_HALF_M, 0);
    expect(s.bench!.widthM).toBeCloseTo(2 * BENCH_HALF_M, 0);
    expect(s.bench!.usableRightOffsetM).toBeCloseTo(BENCH_HALF_M - 1, 1);
    expect(s.bench!.gradeDeg).toBeCloseTo(0, 2);
    expect(s.bench!.stations.length).toBeGreaterThan(250);
  });

  it('goes straight down to where the ground levels', () => {
    expect(s.descent!.azimuthDeg).toBeCloseTo(180, 0);
    expect(s.descent!.end.why).toBe('ground levels');
    // By the rule the last 5 m may hold up to 15° of mean slope: 1.9 m of 35° and level ground after it.
    expect(s.descent!.horizontalM).toBeGreaterThan(38);
    expect(s.descent!.horizontalM).toBeLessThan(40.5);
    const fallM = Math.min(40, s.descent!.horizontalM) * Math.tan((35 * Math.PI) / 180);
    expect(Math.abs(s.descent!.dropM - fallM)).toBeLessThan(0.4);
    expect(s.descent!.crossings).toEqual([]);
    expect(s.descent!.steps).toEqual([]);
  });

  it('reads the angle of the plane, calls it steep, and holds it inside the range', () => {
    expect(s.angle!.governingDeg).toBeGreaterThan(34.3);
    expect(s.angle!.governingDeg).toBeLessThan(35.7);
    expect(s.angle!.rangeDeg[0]).toBeLessThan(35);
    expect(s.angle!.rangeDeg[1]).toBeGreaterThan(35);
    expect(s.angle!.class).toBe('steep');
    expect(s.angle!.planAs).toBe('steep');
    const { low, steep, high } = s.angle!.probability;
    expect(low + steep + high).toBeCloseTo(1, 3);
  });

  it('states where every deciding number comes from', () => {
    for (const path of ['edge.offsetM', 'angle.governingDeg', 'angle.planAs', 'descent.dropM', 'bench.widthM']) {
      expect(s.origins[path]?.rule).toBeTruthy();
    }
  });

  it('leaves no field of the contract undefined and survives JSON', () => {
    const text = JSON.stringify(s);
    expect(JSON.parse(text)).toEqual(s);
    expect(Object.keys(s)).toEqual(
      expect.arrayContaining(
        'schema site terrain check bench above edge descent profile angle spots layouts ways closure arriving call origins warnings sentence'.split(
          ' ',
        ),
      ),
    );
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('says the same twice', () => {
    expect(study(studyInputs(hillside(slope)))).toEqual(s);
  });
});

describe('what changes a study', () => {
  it('plans as high above 45° and puts the stop line first', () => {
    const s = study(studyInputs(hillside({ belowDeg: 50, lengthM: 30, aboveDeg: 30 })));
    expect(s.angle!.planAs).toBe('high');
    expect(s.sentence).toMatch(/^Technical rope team needed/);
  });

  it('plans as low well under 30°', () => {
    const s = study(studyInputs(hillside({ belowDeg: 22, lengthM: 60, aboveDeg: 20 })));
    expect([s.angle!.class, s.angle!.planAs]).toEqual(['low', 'low']);
  });

  it('tells no edge on the uphill side, with exit by a sentence, not an error', () => {
    const s = study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30 }), { side: 'left' }));
    expect([s.edge, s.descent, s.profile, s.angle]).toEqual([null, null, null, null]);
    expect(codes(s)).toContain('no-edge');
    expect(s.sentence).toMatch(/^No drop edge on the uphill side, north/);
  });

  it('takes the steeper side where both drop, and says that both do', () => {
    const s = study(studyInputs(hillside({ belowDeg: 25, lengthM: 40, aboveDeg: -35 })));
    expect(s.site.side).toBe('left');
    expect(codes(s)).toContain('both-sides');
  });

  it('never calls a surface model low', () => {
    const gentle = { belowDeg: 22, lengthM: 60, aboveDeg: 20 };
    const s = study(studyInputs(hillside({ ...gentle, info: { kind: 'surface' } })));
    expect(s.terrain.screeningOnly).toBe(true);
    expect(s.angle!.class).not.toBe('low');
    expect(s.angle!.planAs).not.toBe('low');
    expect(codes(s)).toContain('screening-only');
  });

  it('assumes the bench on coarse cells and only screens', () => {
    const s = study(studyInputs(hillside({ belowDeg: 22, lengthM: 120, aboveDeg: 20, cellM: 10 })));
    expect(s.terrain.screeningOnly).toBe(true);
    expect(s.origins['edge.offsetM']!.how).toBe('assumed');
    expect(s.angle!.planAs).not.toBe('low');
    expect(s.edge!.offsetSigmaM).toBeGreaterThanOrEqual(10);
  });

  it('warns of an unknown kind, an assumed unit and a missing accuracy', () => {
    const info = { kind: 'unknown', verticalUnitAssumed: true, verticalRmseM: null } as const;
    const s = study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30, info })));
    expect(codes(s)).toEqual(expect.arrayContaining(['kind-unknown', 'unit-assumed', 'accuracy-unknown']));
  });

  it('notes a datum shift that may be off by more than a metre', () => {
    const shifted = (shiftAccuracyM: number) =>
      codes(study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30, info: { shiftAccuracyM } }))));
    expect(shifted(4)).toContain('datum-shift');
    expect(shifted(1)).not.toContain('datum-shift');
  });

  it('takes a raster of unknown kind with trees beside the road for a surface model', () => {
    const ground = hillside({ belowDeg: 22, lengthM: 60, aboveDeg: 20, info: { kind: 'unknown' } });
    const { grid } = ground.layers[0];
    for (let row = 4; row < grid.height; row += 9) {
      for (let col = 4; col < grid.width; col += 9) {
        const fromRoad = Math.abs(row - (grid.height - 1) / 2);
        if (fromRoad < 8) continue;
        for (const [r, c] of [
          [0, 0],
          [0, 1],
          [1, 0],
          [1, 1],
        ]) {
          grid.data[(row + r) * grid.width + col + c] += 9;
        }
      }
    }
    const s = study(studyInputs(ground));
    expect(codes(s)).toContain('looks-like-surface');
    expect(s.terrain.screeningOnly).toBe(true);
  });

  it('starts above a patient point and warns of a side pull', () => {
    const ground = hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30 });
    const straight = study(studyInputs(ground, { patient: at(12, -24) }));
    expect(straight.descent!.end.why).toBe('patient point');
    expect(straight.descent!.horizontalM).toBeCloseTo(20, 0);
    expect(plane.toLocal(straight.edge!).x).toBeCloseTo(12, 0);
    expect(codes(straight)).not.toContain('side-pull');
  });

  it('plans a marked wall on the descent as high', () => {
    const wall: Mark = {
      id: 'w',
      kind: 'wall',
      name: null,
      geometry: {
        type: 'LineString',
        coordinates: [at(-10, -20), at(10, -20)].map(({ lon, lat }) => [lon, lat]),
      },
      trunkDiameterM: null,
      heightM: 3,
    };
    const s = study(studyInputs(hillside({ belowDeg: 25, lengthM: 40, aboveDeg: 20 }), { marks: [wall] }));
    expect(s.descent!.steps).toMatchObject([{ heightM: 3, source: 'mark' }]);
    expect(s.angle!.planAs).toBe('high');
    expect(s.warnings[0]).toMatchObject({ code: 'vertical-step', severity: 'stop' });
  });

  it('ends at marked water', () => {
    const water: Mark = {
      id: 'p',
      kind: 'water',
      name: null,
      geometry: {
        type: 'LineString',
        coordinates: [at(-30, -24), at(30, -24)].map(({ lon, lat }) => [lon, lat]),
      },
      trunkDiameterM: null,
      heightM: null,
    };
    const s = study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 20 }), { marks: [water] }));
    expect(s.descent!.end.why).toBe('water');
    expect(s.descent!.horizontalM).toBeLessThan(20);
  });

  it('moves the usable edge in to a marked barrier', () => {
    const barrier: Mark = {
      id: 'b',
      kind: 'barrier',
      name: null,
      geometry: {
        type: 'LineString',
        coordinates: [at(-30, -2.5), at(30, -2.5)].map(({ lon, lat }) => [lon, lat]),
      },
      trunkDiameterM: null,
      heightM: 0.8,
    };
    const s = study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 20 }), { marks: [barrier] }));
    expect(s.bench!.usableRightOffsetM).toBeCloseTo(2, 1);
  });

  it('does not compute on a bridge', () => {
    const roads = indexRoads(roadNetwork({}, { bridge: 'yes' }));
    const s = study(studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30 }), { roads }));
    expect([s.bench, s.edge, s.descent, s.profile, s.angle]).toEqual([null, null, null, null, null]);
    expect(s.sentence).toMatch(/^Not computed: structure/);
  });

  it('refuses a point far from any road with one sentence', () => {
    const ground = hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30 });
    const result = runStudy(studyInputs(ground, { at: at(0, 120) }));
    expect(result).toMatchObject({ ok: false, error: { code: 'no-road' } });
  });

  it('goes steeper at equality of the rule', () => {
    const s = study(
      studyInputs(hillside({ belowDeg: 35, lengthM: 40, aboveDeg: 30 }), {
        rule: { name: '20/35', lowMaxDeg: 20, highMinDeg: 35, source: 'practice' },
      }),
    );
    expect(s.angle!.planAs).toBe('high');
  });
});
