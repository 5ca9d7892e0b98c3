import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRoads } from '../../src/io/index.ts';
import { readRoadTags } from '../../src/road/index.ts';
import { openData } from '../helpers/open-data.ts';

const andorra = openData('andorra_osm_srtm');
const samples = openData('osm_samples');
const lisbon = openData('lisbon_10m');
const quebec = openData('quebec_road_1m');
const read = (folder: string, file: string) => readRoads(readFileSync(join(folder, file), 'utf8'), file);

describe.skipIf(!andorra)('a mountain pass, © OpenStreetMap contributors', () => {
  it('comes out the same from both forms of an Overpass answer', () => {
    const geom = read(andorra!, 'derived_envalira_overpass_geom.json');
    const body = read(andorra!, 'derived_envalira_overpass_body.json');
    expect(geom.ways).toHaveLength(60);
    expect(geom.features.map(({ kind }) => kind)).toEqual(Array(7).fill('trail'));
    expect(body).toEqual(geom);
  });

  it('knows its tunnel', () => {
    const { ways } = read(andorra!, 'derived_envalira_overpass_body.json');
    const tunnel = ways.find(({ id }) => id === 'way/6176755')!;
    expect(readRoadTags(tunnel.tags)).toMatchObject({ tunnel: true, bridge: false, maxSpeedKmh: 80, paved: true });
  });

  it('reads the whole country from GeoJSON with packed tags', () => {
    const { ways, features } = read(andorra!, 'derived_andorra_highways.geojson');
    // 1,614 lines less 281 trails and the two under construction.
    expect(ways).toHaveLength(1331);
    expect(features).toHaveLength(281);
    expect(ways.filter(({ tags }) => readRoadTags(tags).oneway !== 'no').length).toBeGreaterThan(100);
  });
});

describe.skipIf(!samples)('Overpass samples', () => {
  it('reads a small town', () => {
    const { ways, features } = read(samples!, 'map.json');
    expect(ways).toHaveLength(2);
    expect(new Set(features.map(({ kind }) => kind))).toEqual(new Set(['trail', 'wall']));
  });

  it.each(['empty.json', 'node.json'])('%s has no road', (file) => {
    expect(() => read(samples!, file)).toThrow(/holds no road/);
  });

  it('an untagged way alone is a road', () => {
    expect(read(samples!, 'way.json').ways).toHaveLength(1);
  });

  it('an OSM XML file is refused in one sentence', () => {
    expect(() => read(samples!, 'map.osm')).toThrow('map.osm is XML; export the roads as');
  });
});

it.skipIf(!lisbon)('streets in metres of a national grid are refused', () => {
  expect(() => read(lisbon!, 'lisbon_road_network.geojson')).toThrow(/no longitude and latitude/);
});

it.skipIf(!quebec)('a line with a projected crs member is refused, the same line in WGS 84 is read', () => {
  expect(() => read(quebec!, 'derived_centerline_original_epsg2948.geojson')).toThrow(/EPSG::2948/);
  expect(read(quebec!, 'derived_centerline_original_wgs84.geojson').ways).toHaveLength(1);
});
