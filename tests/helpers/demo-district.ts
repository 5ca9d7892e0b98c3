import { readFileSync } from 'node:fs';
import { defaultAngleRule, live, marksOf } from '../../src/book/index.ts';
import type { LonLat } from '../../src/geo/index.ts';
import { groundOfSite, openElevation, readRoads, type StudyRequest } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { indexRoads, roadAt } from '../../src/road/index.ts';
import { defaultCircumstances, type GroundWork, resourcesOfBook } from '../../src/study/index.ts';
import { sideOfAsk } from '../../src/workers/index.ts';
import { demoBook } from './demo-book.ts';

/** A site of the demo's book with the side of its road as drawn. */
interface DemoSite extends LonLat {
  readonly id: string;
  readonly side: 'left' | 'right';
  readonly road: string;
}

/** The demo district opened in this process: its sites, what a study of one is asked with, and the ground worked out. */
export async function demoDistrict() {
  const roads = indexRoads(readRoads(readFileSync('data/demo/roads.geojson', 'utf8'), 'roads.geojson'));
  const book = await demoBook();
  const marks = marksOf(book, null);
  const sites = live(book, 'sites').map(({ id, place: { lon, lat, sideAzimuthDeg }, roadName }): DemoSite => {
    const place = roadAt(roads, { lon, lat });
    if (!place.ok) throw place.error;
    return {
      id,
      lon,
      lat,
      side: sideOfAsk({ azimuthDeg: sideAzimuthDeg }, { lon, lat }, place.value)!,
      road: roadName!,
    };
  });
  const sources = [
    await openElevation(fileSource('data/demo/elevation-1m.tif'), {}),
    await openElevation(fileSource('data/demo/elevation-10m.tif'), {}),
  ];
  const request = ({ lon, lat, side, road }: DemoSite): StudyRequest => ({
    ...defaultCircumstances,
    resources: resourcesOfBook(book, road),
    ...{ roads, marks, side, at: { lon, lat }, patient: null, rule: defaultAngleRule, units: 'us' },
  });
  return {
    sites,
    request,
    site: (id: string): DemoSite => sites.find((site) => site.id === id)!,
    ground: (site: DemoSite): Promise<GroundWork> => groundOfSite(sources, request(site)),
    close: () => Promise.all(sources.map((source) => source.close())),
  };
}
