import type { KeyRoad } from '../key/write-key.ts';
import { collectedOn, type RoadKey } from '../recipe.ts';
import { atEdge, positionOf } from './place.ts';

/** Metres in a statute mile. */
const MILE_M = 1609.344;

/** Where each road's mile markers stand: every half mile, counted from the marker at its start. */
export function makeCalibration(key: readonly KeyRoad[]) {
  const starts: Record<RoadKey, number> = { lantern: 4, cinder: 0, quarry: 0 };
  return key.map(({ key: road, name, columns }) => {
    const along = columns.stationM as number[];
    const points = [];
    for (let mile = 0; mile * MILE_M < along[along.length - 2]; mile += 0.5) {
      const i = along.findIndex((s) => s >= mile * MILE_M);
      const [lon, lat] = positionOf(atEdge(key, road as RoadKey, i, 'left'), 0.8);
      points.push({ mile: starts[road as RoadKey] + mile, lon, lat });
    }
    return { road: name, points };
  });
}

/** Ground that has changed since it was flown. */
export function makeChanges(key: readonly KeyRoad[]) {
  const ring: [number, number][] = [];
  for (let i = 440; i <= 480; i += 10) ring.push(positionOf(atEdge(key, 'lantern', i, 'right'), -1));
  for (let i = 480; i >= 440; i -= 10) ring.push(positionOf(atEdge(key, 'lantern', i, 'right'), 26));
  return {
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        id: 'slip-1',
        properties: {
          since: '2024-11-03',
          note: 'Slip below the road after the November storm; heights are older.',
          flownOn: collectedOn,
        },
        geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] },
      },
    ],
  };
}

/** Places to leave vehicles, as GeoJSON points with the number that fit. */
export function makeParking(key: readonly KeyRoad[]) {
  const places: [string, RoadKey, number, string, number, number][] = [
    ['Split Oak Turnout', 'cinder', 2556, 'right', -3, 3],
    ['Level Acre', 'lantern', 3720, 'left', 12, 20],
    ['Saddle flat', 'cinder', 1745, 'left', 10, 12],
    ['Quarry floor', 'quarry', 1850, 'right', 10, 15],
  ];
  return {
    type: 'FeatureCollection',
    features: places.map(([name, road, station, side, outM, vehicles], k) => ({
      type: 'Feature',
      id: `parking-${k + 1}`,
      properties: { name, vehicles, use: 'staging' },
      geometry: { type: 'Point', coordinates: positionOf(atEdge(key, road, station, side), outM) },
    })),
  };
}

/** Drills held, by site. */
export const drills = [
  {
    on: '2024-05-14',
    site: 'split-oak',
    station: 'st-1',
    crew: 'A shift',
    people: 13,
    did: 'lower and turned haul, 3:1',
    minutes: 52,
    resets: 2,
  },
  {
    on: '2024-06-02',
    site: 'gravel-fan',
    station: 'st-1',
    crew: 'B shift',
    people: 9,
    did: 'carry with one line',
    minutes: 31,
    resets: 0,
  },
  {
    on: '2024-09-21',
    site: 'two-legs',
    station: 'st-2',
    crew: 'C shift',
    people: 11,
    did: 'lower to the lower leg',
    minutes: 38,
    resets: 0,
  },
  {
    on: '2025-04-08',
    site: 'kettle-bend',
    station: 'st-1',
    crew: 'C shift',
    people: 14,
    did: 'turned haul, 3:1',
    minutes: 64,
    resets: 3,
  },
];

/** Field readings, with who, when and how. */
export function makeMeasurements(key: readonly KeyRoad[]) {
  const edge = (road: RoadKey, station: number, side: string) => {
    const value = key.find((k) => k.key === road)?.columns[`${side}.edgeM`][station];
    return Math.round(((value as number) + 0.06) * 10) / 10;
  };
  return [
    {
      site: 'split-oak',
      what: 'edge from the middle of the road',
      valueM: edge('cinder', 2556, 'right'),
      by: 'training officer',
      on: '2024-04-30',
      method: 'tape',
    },
    {
      site: 'split-oak',
      what: 'angle on the steepest 5 m',
      valueDeg: 22,
      by: 'training officer',
      on: '2024-04-30',
      method: 'hand level and tape',
    },
    {
      site: 'split-oak',
      what: 'angle on the steepest 5 m',
      valueDeg: 21,
      by: 'captain, A shift',
      on: '2024-05-14',
      method: 'inclinometer',
    },
    {
      site: 'kettle-bend',
      what: 'edge from the middle of the road',
      valueM: edge('lantern', 1205, 'right'),
      by: 'prevention officer',
      on: '2025-03-19',
      method: 'tape',
    },
    {
      site: 'kettle-bend',
      what: 'angle on the steepest 5 m',
      valueDeg: 46,
      by: 'prevention officer',
      on: '2025-03-19',
      method: 'inclinometer',
    },
    {
      site: 'coin-toss',
      what: 'angle on the steepest 5 m',
      valueDeg: 31,
      by: 'captain, B shift',
      on: '2025-05-02',
      method: 'inclinometer',
    },
  ];
}
