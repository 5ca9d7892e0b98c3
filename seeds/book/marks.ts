import type { Geometry } from 'geojson';
import type { KeyRoad } from '../key/write-key.ts';
import { lonLat } from '../position.ts';
import { area, type RoadKey } from '../recipe.ts';
import { atEdge, positionOf } from './place.ts';

interface MarkSeed {
  readonly id: string;
  readonly kind: string;
  readonly geometry: Geometry;
  readonly name?: string;
  readonly trunkDiameterM?: number;
  readonly heightM?: number;
}

/** The marks that a survey would have left, as GeoJSON features; sites' trees, wires, water, ground and patient points. */
export function makeMarks(key: readonly KeyRoad[]) {
  const near = (road: RoadKey, station: number, side: string, outM: number, alongM = 0): Geometry => ({
    type: 'Point',
    coordinates: positionOf(atEdge(key, road, station, side), outM, alongM),
  });
  const along = (road: RoadKey, from: number, to: number, side: string, outM: number): [number, number][] => {
    const out: [number, number][] = [];
    for (let i = from; i <= to; i += 10) out.push(positionOf(atEdge(key, road, i, side), outM));
    return out;
  };
  const strip = (road: RoadKey, from: number, to: number, side: string, inner: number, outer: number): Geometry => {
    const ring = [...along(road, from, to, side, inner), ...along(road, from, to, side, outer).reverse()];
    return { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
  };
  const seeds: MarkSeed[] = [
    {
      id: 'tree-oak',
      kind: 'tree',
      name: 'the split oak',
      trunkDiameterM: 0.62,
      geometry: near('cinder', 2556, 'left', 3.5, 6),
    },
    { id: 'tree-1', kind: 'tree', trunkDiameterM: 0.34, geometry: near('lantern', 1205, 'left', 4, -9) },
    { id: 'tree-2', kind: 'tree', trunkDiameterM: 0.28, geometry: near('lantern', 1205, 'left', 5, 11) },
    { id: 'tree-3', kind: 'tree', trunkDiameterM: 0.16, geometry: near('cinder', 855, 'left', 3, 4) },
    { id: 'tree-4', kind: 'tree', trunkDiameterM: 0.41, geometry: near('cinder', 2160, 'left', 3.5, -5) },
    { id: 'tree-5', kind: 'tree', trunkDiameterM: 0.3, geometry: near('cinder', 2160, 'right', 9, 3) },
    { id: 'tree-6', kind: 'tree', trunkDiameterM: 0.25, geometry: near('cinder', 1860, 'right', 31, 2) },
    {
      id: 'rock-1',
      kind: 'rock',
      name: 'boulder as tall as a person',
      heightM: 1.8,
      geometry: near('quarry', 600, 'left', 2.5, 8),
    },
    { id: 'culvert-3', kind: 'culvert', name: 'third culvert', geometry: near('lantern', 1465, 'right', -3.8) },
    {
      id: 'barrier-1',
      kind: 'barrier',
      name: 'guardrail',
      heightM: 0.75,
      geometry: { type: 'LineString', coordinates: along('lantern', 2030, 2330, 'right', -0.45) },
    },
    {
      id: 'wall-1',
      kind: 'wall',
      name: 'retaining wall',
      heightM: 3.2,
      geometry: { type: 'LineString', coordinates: along('lantern', 2880, 2950, 'right', 0.2) },
    },
    {
      id: 'firm-1',
      kind: 'firm ground',
      name: 'turnout, compacted gravel',
      geometry: strip('cinder', 2546, 2566, 'right', -5.5, -0.8),
    },
    { id: 'firm-2', kind: 'firm ground', name: 'turnout', geometry: strip('cinder', 1246, 1270, 'right', -5, -0.8) },
    {
      id: 'soft-1',
      kind: 'soft ground',
      name: 'verge gives way when wet',
      geometry: strip('lantern', 520, 560, 'right', -2.6, 0.2),
    },
    { id: 'turnout-1', kind: 'turnout', geometry: near('cinder', 2556, 'right', -3) },
    { id: 'turnout-2', kind: 'turnout', geometry: near('cinder', 1258, 'right', -3) },
    { id: 'turnout-3', kind: 'turnout', geometry: near('quarry', 600, 'right', -2.5) },
    { id: 'gate-1', kind: 'gate', name: 'quarry gate, padlocked', geometry: near('quarry', 70, 'left', -2.7) },
    { id: 'sign-1', kind: 'sign', name: 'curve warning', geometry: near('lantern', 1170, 'left', 1) },
    {
      id: 'dead-1',
      kind: 'radio dead spot',
      name: 'no radio below the road',
      geometry: near('cinder', 1860, 'right', 40),
    },
    {
      id: 'pole-1',
      kind: 'pole',
      geometry: { type: 'Point', coordinates: lonLat(area.west + 1460, area.south + 1420) },
    },
    {
      id: 'wire-1',
      kind: 'wire',
      name: 'power line over both roads',
      heightM: 11,
      geometry: {
        type: 'LineString',
        coordinates: [
          lonLat(area.west + 1190, area.south + 1700),
          lonLat(area.west + 1460, area.south + 1420),
          lonLat(area.west + 1700, area.south + 1130),
        ],
      },
    },
    {
      id: 'water-1',
      kind: 'water',
      name: 'Lantern Creek',
      geometry: { type: 'LineString', coordinates: along('lantern', 20, 160, 'right', 36) },
    },
    {
      id: 'patient-1',
      kind: 'patient point',
      name: 'Long Ladle, past patient',
      geometry: near('cinder', 1860, 'right', 58, 3),
    },
    { id: 'patient-2', kind: 'patient point', name: 'Gravel Fan, drill', geometry: near('quarry', 1060, 'left', 17) },
    {
      id: 'step-1',
      kind: 'step',
      name: 'rock band',
      heightM: 2.6,
      geometry: { type: 'LineString', coordinates: along('cinder', 1610, 1660, 'right', 5) },
    },
  ];
  return {
    type: 'FeatureCollection',
    features: seeds.map(({ geometry, ...properties }) => ({
      type: 'Feature',
      id: properties.id,
      properties,
      geometry,
    })),
  };
}
