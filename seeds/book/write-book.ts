import { writeFile } from 'node:fs/promises';
import type { KeyRoad } from '../key/write-key.ts';
import { makeCrashes } from './crashes.ts';
import { fleet } from './fleet.ts';
import { kits } from './kit.ts';
import { makeMarks } from './marks.ts';
import { atEdge, azimuthOut, positionOf } from './place.ts';
import { drills, makeCalibration, makeChanges, makeMeasurements, makeParking } from './records.ts';
import { areas, response } from './response.ts';
import { siteSeeds } from './site-list.ts';
import { stations } from './stations.ts';

/** Writes what the district keeps beside its ground and roads: sites, marks, fleet, kit, stations, response, records. */
export async function writeBook(folder: string, key: readonly KeyRoad[]): Promise<void> {
  const files: Record<string, unknown> = {
    'sites.json': {
      schema: 'brinkbook/demo-sites@1',
      district: 'Tamarrow Fire District (invented)',
      sites: makeSites(key),
    },
    'fleet.json': { schema: 'brinkbook/demo-fleet@1', fleet },
    'kit.json': { schema: 'brinkbook/demo-kit@1', kits },
    'stations.json': { schema: 'brinkbook/demo-stations@1', stations },
    'response.json': { schema: 'brinkbook/demo-response@1', areas, response },
    'marks.geojson': makeMarks(key),
    'parking.geojson': makeParking(key),
    'changed-since.geojson': makeChanges(key),
    'calibration.json': { schema: 'brinkbook/demo-calibration@1', roads: makeCalibration(key) },
    'drills.json': { schema: 'brinkbook/demo-drills@1', drills },
    'measurements.json': { schema: 'brinkbook/demo-measurements@1', measurements: makeMeasurements(key) },
  };
  for (const [name, content] of Object.entries(files)) {
    await writeFile(`${folder}/${name}`, `${JSON.stringify(content, null, 1)}\n`);
  }
  await writeFile(`${folder}/crashes.csv`, makeCrashes(key));
}

function makeSites(key: readonly KeyRoad[]) {
  return siteSeeds.map(({ id, name, road, station, side, character }) => {
    const place = atEdge(key, road, station, side);
    const [lon, lat] = positionOf(place);
    const roadName = key.find((k) => k.key === road)?.name;
    return { id, name, lon, lat, side, sideAzimuthDeg: azimuthOut(place), road: roadName, character };
  });
}
