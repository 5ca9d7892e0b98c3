import { readFileSync } from 'node:fs';
import { defaultAngleRule } from '../../src/book/index.ts';
import {
  groundOfSite,
  type ListedSite,
  openElevation,
  readMarks,
  readResources,
  readRoads,
  readSites,
  resourcesOn,
  type StudyRequest,
} from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { indexRoads } from '../../src/road/index.ts';
import { defaultCircumstances, type GroundWork } from '../../src/study/index.ts';

const file = (name: string) => ({ name, text: readFileSync(`data/demo/${name}`, 'utf8') });

/** The demo district opened in this process: its sites, what a study of one is asked with, and the ground worked out. */
export async function demoDistrict() {
  const roads = indexRoads(readRoads(file('roads.geojson').text, 'roads.geojson'));
  const marks = readMarks(file('marks.geojson').text, 'marks.geojson');
  const { sites } = readSites(file('sites.json').text, 'sites.json');
  const district = readResources({
    fleet: file('fleet.json'),
    kit: file('kit.json'),
    stations: file('stations.json'),
    response: file('response.json'),
  });
  const sources = [
    await openElevation(fileSource('data/demo/elevation-1m.tif'), {}),
    await openElevation(fileSource('data/demo/elevation-10m.tif'), {}),
  ];
  const request = ({ lon, lat, side, road }: ListedSite): StudyRequest => ({
    ...defaultCircumstances,
    resources: resourcesOn(district, road),
    ...{ roads, marks, side, at: { lon, lat }, patient: null, rule: defaultAngleRule, units: 'us' },
  });
  return {
    sites,
    request,
    site: (id: string): ListedSite => sites.find((site) => site.id === id)!,
    ground: (site: ListedSite): Promise<GroundWork> => groundOfSite(sources, request(site)),
    close: () => Promise.all(sources.map((source) => source.close())),
  };
}
