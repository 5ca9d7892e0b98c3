import type { Study } from '../../src/study/index.ts';

/** A hand-made study for drawing and wording tests: 33° for 30 m, then 15° for 15 m; nothing in it was computed. */
export function studyFixture(change: Partial<Study> = {}): Study {
  const distanceM: number[] = [];
  const elevationM: number[] = [];
  const angleDeg: number[] = [];
  for (let i = 0; i <= 90; i++) {
    const d = i * 0.5;
    distanceM.push(d);
    elevationM.push(1000 - (d <= 30 ? d * 0.649 : 30 * 0.649 + (d - 30) * 0.268) + 0.05 * Math.sin(d));
    angleDeg.push(d <= 30 ? 33 : 15);
  }
  const behindM = [-1, -2, -4, -6, -7, -8, -10];
  const behind = { distanceM: behindM, elevationM: behindM.map((d) => 1000 + (d < -7 ? (-d - 7) * 0.8 : 0.02 * -d)) };
  return {
    schema: 'brinkbook/study@1',
    site: {
      lon: -128,
      lat: 44,
      side: 'right',
      sideAzimuthDeg: 180,
      sideWords: 'downhill side, south, right when driving east',
      road: { id: 'w1', name: 'Cinder Grade Road', stationM: 420 },
    },
    given: {
      conditions: { wet: false, ice: false, night: false, wind: false },
      patients: 1,
      resources: 'shipped',
    },
    terrain: {
      source: 'elevation-1m.tif',
      kind: 'bare earth',
      crs: 'EPSG:32609',
      cellM: 1,
      verticalRmseM: 0.05,
      collectedOn: '2023-06-01',
      screeningOnly: false,
      outdatedBy: null,
      sources: [],
    },
    check: null,
    field: [],
    bench: null,
    above: { angleDeg: 38.7, heightM: 2.4 },
    edge: { lon: -128, lat: 44, elevationM: 1000, offsetM: 4.9, offsetSigmaM: 0.2, firmOffsetM: 4.5, lipAngleDeg: 31 },
    descent: {
      azimuthDeg: 178,
      horizontalM: 45,
      dropM: 23.5,
      groundLengthM: 51.3,
      ropeLineM: 50.9,
      end: { lon: -128, lat: 44, elevationM: elevationM.at(-1)!, why: 'ground levels' },
      crossings: [{ kind: 'trail', distanceM: 34, widthM: 2, lon: -128, lat: 44 }],
      steps: [],
      contacts: [
        { distanceM: 0, bendDeg: 15.2 },
        { distanceM: 21, bendDeg: 5.6 },
      ],
      sightLostAtM: 26,
      ropeCorners: {
        distanceM: [0, 21, 45],
        elevationM: [1000, 986.4, elevationM.at(-1)! + 0.8],
      },
      whole: null,
    },
    profile: { distanceM, elevationM, angleDeg, behind },
    angle: {
      governingDeg: 33.4,
      governingSigmaDeg: 0.9,
      rangeDeg: [31.8, 35.1],
      nearbyMaxDeg: 36.1,
      stretchM: [11, 16],
      meanDeg: 27.5,
      windowM: 5,
      class: 'steep',
      planAs: 'steep',
      probability: { low: 0.004, steep: 0.996, high: 0 },
      rule: { name: '30/45', lowMaxDeg: 30, highMinDeg: 45 },
      ropePullOfWeight: 0.55,
      groundPressOfWeight: 0.835,
    },
    spots: [],
    layouts: [],
    ways: [],
    closure: null,
    arriving: [],
    call: [],
    marks: [],
    origins: {},
    warnings: [],
    sentence: '',
    ...change,
  };
}
