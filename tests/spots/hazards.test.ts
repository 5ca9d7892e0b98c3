import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { hazardsOf } from '../../src/spots/index.ts';

const plane = localPlane({ lon: -128, lat: 44 });
const at = (x: number, y: number): [number, number] => {
  const { lon, lat } = plane.toLonLat({ x, y });
  return [lon, lat];
};
const mark = (geometry: Geometry) => ({
  ...{ id: 'M1', kind: 'soft ground' as const, name: null, geometry, trunkDiameterM: null, heightM: null },
});

describe('hazards', () => {
  it('bring marks of every shape to the plane', () => {
    const ring = [at(0, 0), at(10, 0), at(10, 5), at(0, 0)];
    const shapes = hazardsOf(
      [
        mark({ type: 'Point', coordinates: at(3, -4) }),
        mark({ type: 'MultiLineString', coordinates: [ring.slice(0, 2), ring.slice(1, 3)] }),
        mark({ type: 'MultiPolygon', coordinates: [[ring]] }),
      ],
      [],
      plane,
    );
    expect(shapes.map(({ shape }) => shape)).toEqual(['point', 'line', 'line', 'area']);
    expect(shapes[0]!.xy[0]).toBeCloseTo(3, 6);
    expect(shapes[3]!.xy[5]).toBeCloseTo(5, 6);
  });

  it('take mapped wires, poles, walls, barriers, water and cliffs, the last as steps; trails do not matter', () => {
    const kinds = ['wire', 'pole', 'wall', 'barrier', 'water', 'cliff', 'trail', 'embankment'] as const;
    const features = kinds.map((kind) => ({
      ...{
        id: kind,
        kind,
        shape: 'line' as const,
        coordinates: Float64Array.from([...at(0, 0), ...at(5, 5)]),
        tags: {},
      },
    }));
    expect(hazardsOf([], features, plane).map(({ kind }) => kind)).toEqual([
      ...['wire', 'pole', 'wall', 'barrier', 'water', 'step'],
    ]);
  });
});
