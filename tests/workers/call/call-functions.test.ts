import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { defaultAngleRule, emptyBook, readRecord } from '../../../src/book/index.ts';
import { type LonLat, localPlane } from '../../../src/geo/index.ts';
import type { CallRoad } from '../../../src/io/offline/index.ts';
import { memoryStore, readKeptStudy, readPack } from '../../../src/io/offline/index.ts';
import { fairConditions } from '../../../src/rigging/index.ts';
import { positionOnRoute } from '../../../src/road/index.ts';
import type { Study } from '../../../src/study/index.ts';
import { azimuthOf } from '../../../src/units/index.ts';
import { type CallOutline, type CallSource, callFunctions } from '../../../src/workers/call/index.ts';
import { demoBook } from '../../helpers/demo-book.ts';
import { fileOpener } from '../../helpers/file-opener.ts';

const demo = (name: string): string => join(fileURLToPath(new URL('../../../data/demo/', import.meta.url)), name);
const opener = fileOpener();
const source: CallSource = {
  name: 'Invented',
  invented: true,
  files: {
    elevation: [demo('elevation-1m.tif'), demo('elevation-10m.tif')],
    options: {},
    roads: demo('roads.geojson'),
    marks: null,
  },
  book: await demoBook(),
  units: 'us',
  rule: defaultAngleRule,
};
const never = new AbortController().signal;

const routeOf = (road: CallRoad) => ({
  ...road,
  line: Float64Array.from(road.line),
  stationM: Float64Array.from(road.stationM),
  legs: [],
});
const bearing = (from: LonLat, to: LonLat): number => {
  const { x, y } = localPlane(from).toLocal(to);
  return azimuthOf(x, y);
};

describe('what the call view asks of its worker', () => {
  const store = memoryStore();
  const keeping: boolean[] = [];
  const functions = callFunctions(opener, store, (now) => keeping.push(now));
  let outline: CallOutline;
  beforeAll(async () => {
    outline = await functions.open({ source, keeping: true }, never);
  }, 60_000);

  test('the sites in the order of the roads, with their miles; posts told as they are', () => {
    const { sites, roads } = outline.pack;
    expect(sites.length).toBeGreaterThanOrEqual(14);
    for (const road of new Set(sites.map((site) => site.road))) {
      const own = sites.filter((site) => site.road === road);
      const first = sites.findIndex((site) => site.road === road);
      expect(sites.slice(first, first + own.length)).toEqual(own);
      const stations = own.map(({ stationM }) => stationM ?? 1e9);
      expect(stations).toEqual([...stations].sort((a, b) => a - b));
    }
    expect(roads.find(({ name }) => name === 'Lantern Creek Road')!.calibration.stretches.length).toBe(4);
    const kettle = sites.find(({ id }) => id === 'kettle-bend')!;
    // Between the posts 4.5 and 5, which stand before and after it.
    expect(kettle.mile).toBeGreaterThan(4.5);
    expect(kettle.mile).toBeLessThan(5);
    expect(outline.complaints).toEqual([]);
    expect(structuredClone(outline)).toEqual(outline);
  });

  test('keeps a site’s study in a weather, and the pack at the end', async () => {
    const site = await functions.keepSite({ id: 'kettle-bend', weather: 'wet' }, never);
    expect(site).toMatchObject({ id: 'kettle-bend', planAs: 'high', road: 'Lantern Creek Road' });
    const kept = await readKeptStudy(store, 'kettle-bend', 'wet');
    expect(kept!.study.given.conditions).toMatchObject({ wet: true, ice: false });
    expect(kept!.study.sentence).toMatch(/Plan as high: 46° measured/);
    const pack = { ...outline.pack, sites: [site], madeAtMs: 1, madeFrom: 'x' };
    await functions.finish(pack, never);
    expect(await readPack(store)).toEqual(pack);
    expect(keeping).toEqual([true, false]);
    await expect(functions.keepSite({ id: 'nowhere', weather: 'dry' }, never)).rejects.toThrow(/no site "nowhere"/);
  }, 60_000);

  test('the way by road to a site, and whether it lies ahead', async () => {
    const [road] = outline.pack.roads.filter(({ name }) => name === 'Lantern Creek Road').slice(0, 1);
    const site = outline.pack.sites.find(({ id }) => id === 'kettle-bend')!;
    const at = (stationM: number) => positionOnRoute(routeOf(road!), stationM);
    const from = at(site.stationM! - 900);
    const toward = bearing(from, at(site.stationM! - 880));
    const ask = { from, errorM: 8, headingDeg: toward, to: site };
    const found = (await functions.byRoad(ask, never))!;
    expect(found.alongM / 900).toBeCloseTo(1, 2);
    expect(found).toMatchObject({ ahead: true, errorM: 8 });
    expect(await functions.byRoad({ ...ask, headingDeg: toward + 180 }, never)).toMatchObject({ ahead: false });
    expect(await functions.byRoad({ ...ask, headingDeg: null }, never)).toMatchObject({ ahead: null });
    // A device far from every road is on no way at all.
    expect(await functions.byRoad({ ...ask, from: { lon: -128.2, lat: 44.2 } }, never)).toBeNull();
  });

  test('below a site its edge is offered first, with the drop that the study has, and the site with it', async () => {
    const site = outline.pack.sites.find(({ id }) => id === 'kettle-bend')!;
    const at = { lon: site.lon, lat: site.lat };
    const study = await functions.study(
      { at, side: { azimuthDeg: site.sideAzimuthDeg }, siteId: site.id, conditions: fairConditions },
      never,
    );
    const { edge, profile } = study;
    // 30 m down the descent.
    const i = profile!.distanceM.findIndex((m) => m >= 30);
    const share = profile!.distanceM[i]! / study.descent!.horizontalM;
    const place = {
      lon: edge!.lon + share * (study.descent!.end.lon - edge!.lon),
      lat: edge!.lat + share * (study.descent!.end.lat - edge!.lat),
    };
    const { above, where } = await functions.around({ at: place, errorM: 5 }, never);
    expect(where).toBe('slope');
    expect(above[0]).toMatchObject({ roadName: 'Lantern Creek Road', traced: true, drops: true });
    expect(above[0]!.sites[0]).toMatchObject({ siteId: 'kettle-bend' });
    expect(above[0]!.sites[0]!.alongM).toBeLessThan(15);
    const drop = edge!.elevationM - profile!.elevationM[i]!;
    expect(above[0]!.dropM[0]).toBeLessThan(drop + 0.5);
    expect(above[0]!.dropM[1]).toBeGreaterThan(drop - 0.5);
  }, 60_000);
});

describe('with ground around the sites only', () => {
  const functions = callFunctions(opener, memoryStore(), () => {});

  test('roads are told as far as it reaches, and not at all beyond: none is left out for want of ground', async () => {
    await functions.open({ source: { ...source, groundHalfM: 500 }, keeping: false }, never);
    const near = await functions.around({ at: { lon: -128.01562, lat: 43.99952 }, errorM: 8 }, never);
    expect(near.above.length).toBeGreaterThan(0);
    expect(near.reachM).toBeLessThanOrEqual(308);
    // 0.02 degrees of latitude off every site, where the files have ground all the same.
    const far = functions.around({ at: { lon: -128.0256, lat: 44.0105 }, errorM: 5 }, never);
    await expect(far).rejects.toThrow(/was not published/);
  }, 60_000);
});

describe('with a book', () => {
  const functions = callFunctions(opener, memoryStore(), () => {});
  const site = readRecord(
    'sites',
    {
      id: 'own-bend',
      name: 'Own Bend',
      place: { lon: -128.01572116, lat: 43.99981778, sideAzimuthDeg: 166 },
      roadName: 'Lantern Creek Road',
      patients: 2,
    },
    'test',
  );

  test('its sites, its marks and its patients count; people are the shipped ones where it has none', async () => {
    const book = { ...emptyBook(), tables: { ...emptyBook().tables, sites: [site] } };
    const { pack } = await functions.open({ source: { ...source, book }, keeping: false }, never);
    expect(pack.sites.map(({ id, name }) => [id, name])).toEqual([['own-bend', 'Own Bend']]);
    const ask = { at: pack.sites[0]!, side: { azimuthDeg: 166 }, siteId: 'own-bend', conditions: fairConditions };
    const own = await functions.study(ask, never);
    expect(own.given.patients).toBe(2);
    // What the road file maps counts either way.
    const marked = ({ marks }: Study) => marks.filter(({ id }) => !/^(way|node)\//.test(id)).map(({ kind }) => kind);
    expect(marked(own)).toEqual([]);
    await functions.open({ source, keeping: false }, never);
    const ofDemo = await functions.study({ ...ask, siteId: 'kettle-bend' }, never);
    expect(marked(ofDemo)).toContain('tree');
    expect([own.given.resources, ofDemo.given.resources]).toEqual(['shipped', 'book']);
  }, 60_000);
});
