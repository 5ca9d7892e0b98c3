import { appFolder } from '../io/offline/index.ts';
import type { DistrictFiles } from '../workers/index.ts';

/** Where the demo district's files are served from, beside the app. */
export function demoFiles(): DistrictFiles {
  const file = (name: string): string => new URL(`demo/${name}`, appFolder()).href;
  return {
    elevation: [file('elevation-1m.tif'), file('elevation-10m.tif')],
    options: {},
    roads: file('roads.geojson'),
    marks: file('marks.geojson'),
    sites: file('sites.json'),
    posts: file('calibration.json'),
    resources: {
      fleet: file('fleet.json'),
      kit: file('kit.json'),
      stations: file('stations.json'),
      response: file('response.json'),
    },
  };
}
