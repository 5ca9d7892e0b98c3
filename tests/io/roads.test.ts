import { describe, expect, it } from 'vitest';
import { readRoads } from '../../src/io/index.ts';

const line = (properties: object, coordinates = [[7, 46] as number[], [7.001, 46]], more: object = {}) => ({
  type: 'Feature',
  properties,
  geometry: { type: 'LineString', coordinates },
  ...more,
});
const collection = (...features: object[]) => JSON.stringify({ type: 'FeatureCollection', features });

describe('GeoJSON', () => {
  it('sorts tagged lines into roads and what is mapped beside them', () => {
    const network = readRoads(
      collection(
        line({ highway: 'unclassified', name: 'Cinder Grade Road' }, undefined, { id: 'way/1' }),
        line({ highway: 'path' }),
        line({ waterway: 'stream' }),
        line({ waterway: 'stream', tunnel: 'culvert' }),
        line({ barrier: 'guard_rail' }),
        line({ barrier: 'retaining_wall' }),
        line({ natural: 'cliff' }),
        line({ man_made: 'embankment' }),
        line({ power: 'line' }),
        line({ highway: 'proposed' }),
        line({ remark: 'untagged' }),
        { type: 'Feature', properties: { power: 'pole' }, geometry: { type: 'Point', coordinates: [7, 46] } },
        {
          type: 'Feature',
          properties: { natural: 'water' },
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [7, 46],
                [7.1, 46],
                [7.1, 46.1],
                [7, 46],
              ],
            ],
          },
        },
      ),
      'roads.geojson',
    );
    expect(network.ways.map(({ id, name }) => [id, name])).toEqual([['way/1', 'Cinder Grade Road']]);
    expect(network.features.map(({ kind, shape }) => `${kind} ${shape}`)).toEqual([
      'trail line',
      'water line',
      'barrier line',
      'wall line',
      'cliff line',
      'embankment line',
      'wire line',
      'pole point',
      'water area',
    ]);
  });

  it('takes every untagged line for a road where no line is tagged highway', () => {
    const network = readRoads(
      collection(line({ NAME: 'Old Quarry Spur' }), line({ waterway: 'stream' })),
      'own.geojson',
    );
    expect(network.ways.map(({ name }) => name)).toEqual(['Old Quarry Spur']);
    expect(network.features).toHaveLength(1);
  });

  it('parts multi-lines, drops doubled points, reads packed and nested tags', () => {
    const multi = {
      type: 'Feature',
      id: 5,
      properties: { highway: 'track', other_tags: '"width"=>"3.5","note"=>"a \\"b\\""' },
      geometry: {
        type: 'MultiLineString',
        coordinates: [
          [
            [7, 46],
            [7, 46],
            [7.1, 46],
          ],
          [
            [8, 46],
            [8.1, 46],
          ],
        ],
      },
    };
    const nested = line({ tags: { highway: 'service' } });
    const { ways } = readRoads(collection(multi, nested), 'x');
    expect(ways.map(({ id, line: l }) => [id, l.length])).toEqual([
      ['5', 4],
      ['5#2', 4],
      ['line/2', 4],
    ]);
    expect(ways[0].tags).toMatchObject({ width: '3.5', note: 'a "b"' });
  });

  it.each([
    [
      'a bare line',
      JSON.stringify({
        type: 'LineString',
        coordinates: [
          [7, 46],
          [7.1, 46],
        ],
      }),
    ],
    ['a lone feature', JSON.stringify(line({}))],
    ['a byte order mark', `\uFEFF${collection(line({}))}`],
    [
      'heights in the positions',
      collection(
        line({}, [
          [7, 46, 900],
          [7.1, 46, 910],
        ]),
      ),
    ],
  ])('reads %s', (_, text) => {
    expect(readRoads(text, 'x').ways).toHaveLength(1);
  });

  it.each([
    ['', 'x is empty; expected GeoJSON lines or Overpass JSON.'],
    ['<osm/>', 'x is XML; export the roads as GeoJSON lines or Overpass JSON.'],
    ['{"type":', 'x is not readable JSON, perhaps cut short; expected GeoJSON lines or Overpass JSON.'],
    ['[1]', 'x is JSON but holds no features; expected GeoJSON lines or Overpass JSON.'],
    [
      collection(),
      'x holds no road; expected GeoJSON lines or Overpass JSON with at least one line tagged highway, or untagged lines alone.',
    ],
    [
      collection(
        line({}, [
          [-88274.9, -106302.9],
          [-88265.8, -106303.3],
        ]),
      ),
      'x has coordinates such as (-88274.9, -106302.9), which are no longitude and latitude; save the roads in WGS 84 (EPSG:4326).',
    ],
    [
      JSON.stringify({
        type: 'FeatureCollection',
        crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::2948' } },
        features: [line({})],
      }),
      'x says that its coordinates are in urn:ogc:def:crs:EPSG::2948; save the roads as longitude and latitude (WGS 84, EPSG:4326).',
    ],
    [
      collection(
        line({}, [
          [7, 46],
          ['a' as unknown as number, 1],
        ]),
      ),
      'x has a position that is no pair of numbers; save it again as GeoJSON with longitude and latitude.',
    ],
  ])('refuses %s', (text, sentence) => {
    expect(() => readRoads(text, 'x')).toThrow(sentence);
  });

  it('an old crs member that means longitude and latitude is no reason to refuse', () => {
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326']) {
      const crs = { type: 'name', properties: { name } };
      expect(readRoads(JSON.stringify({ ...JSON.parse(collection(line({}))), crs }), 'x').ways).toHaveLength(1);
    }
  });
});

describe('Overpass JSON', () => {
  const overpass = (...elements: object[]) => JSON.stringify({ version: 0.6, elements });

  it('out geom: parts a line where a box cut it', () => {
    const p = (lat: number, lon: number) => ({ lat, lon });
    const { ways } = readRoads(
      overpass({
        type: 'way',
        id: 9,
        tags: { highway: 'secondary', ref: 'K 12' },
        geometry: [p(46, 7), p(46, 7.1), null, null, p(46, 7.3), p(46, 7.4), null, p(46, 8)],
      }),
      'x',
    );
    expect(ways.map(({ id, name, line: l }) => [id, name, [...l]])).toEqual([
      ['way/9', 'K 12', [7, 46, 7.1, 46]],
      ['way/9#2', 'K 12', [7.3, 46, 7.4, 46]],
    ]);
  });

  it('out body: takes positions from the nodes, wherever they stand, and parts a line where one is missing', () => {
    const node = (id: number, lon: number) => ({ type: 'node', id, lat: 46, lon });
    const way = { type: 'way', id: 1, nodes: [1, 2, 99, 3, 4], tags: { highway: 'track' } };
    const { ways } = readRoads(overpass(node(1, 7), way, node(2, 7.1), node(3, 7.2), node(4, 7.3)), 'x');
    expect(ways.map(({ line: l }) => [...l])).toEqual([
      [7, 46, 7.1, 46],
      [7.2, 46, 7.3, 46],
    ]);
  });

  it('water drawn as a relation keeps its outer ways', () => {
    const ring = [
      [7, 46],
      [7.1, 46],
      [7.1, 46.1],
      [7, 46],
    ].map(([lon, lat]) => ({ lon, lat }));
    const road = { type: 'way', id: 1, tags: { highway: 'track' }, geometry: ring.slice(0, 2) };
    const lake = {
      type: 'relation',
      id: 3,
      tags: { type: 'multipolygon', natural: 'water' },
      members: [
        { type: 'way', ref: 7, role: 'outer', geometry: ring },
        { type: 'way', ref: 8, role: 'inner', geometry: ring },
      ],
    };
    expect(readRoads(overpass(road, lake), 'x').features).toMatchObject([{ kind: 'water', shape: 'area' }]);
  });

  it.each([
    [overpass(), 'x holds no road: the answer is empty; ask for an area with roads in it.'],
    [
      JSON.stringify({ elements: [], remark: 'runtime error: Query timed out' }),
      'x holds no road because the map server answered "runtime error: Query timed out"; ask for a smaller area.',
    ],
    [
      overpass({ type: 'way', id: 1, nodes: [1, 2], tags: { highway: 'track' } }),
      'x has ways without positions; ask for them with "out geom", or with "out body" followed by their nodes.',
    ],
    [
      overpass({ type: 'node', id: 1, lat: 1, lon: 2 }),
      'x holds no road; expected GeoJSON lines or Overpass JSON with at least one line tagged highway, or untagged lines alone.',
    ],
  ])('refuses %s', (text, sentence) => {
    expect(() => readRoads(text, 'x')).toThrow(sentence);
  });
});
