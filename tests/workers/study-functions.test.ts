import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { LineString } from 'geojson';
import { beforeAll, describe, expect, test } from 'vitest';
import { defaultAngleRule, emptyBook, restoreBook } from '../../src/book/index.ts';
import { applyUpdate, emptyState, readUpdate, snapshotOf } from '../../src/book/merge/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import { type StudyAsk, studyFunctions, transferListOf } from '../../src/workers/index.ts';
import { demoBook, demoSite } from '../helpers/demo-book.ts';
import { fileOpener } from '../helpers/file-opener.ts';

const demo = (name: string): string => join(fileURLToPath(new URL('../../data/demo/', import.meta.url)), name);
const opener = fileOpener();
const files = {
  elevation: [demo('elevation-10m.tif'), demo('elevation-1m.tif')],
  options: {},
  roads: demo('roads.geojson'),
  marks: demo('marks.geojson'),
};
const never = new AbortController().signal;
const bitmap = async (rgba: Uint8ClampedArray, size: number) => ({ rgba, size });

describe('the functions of the study worker, called directly', () => {
  const functions = studyFunctions(opener, bitmap);
  let kettleBend: StudyAsk;
  beforeAll(async () => {
    await functions.open(files, never);
    const { lon, lat, sideAzimuthDeg } = (await demoSite('kettle-bend')).place;
    kettleBend = { at: { lon, lat }, side: { azimuthDeg: sideAzimuthDeg }, rule: defaultAngleRule, units: 'us' };
  });

  test('an opened district tells the map what it needs, finest raster first', async () => {
    const view = await functions.open(files, never);
    expect(view.elevation.map(({ cellM }) => Math.round(cellM))).toEqual([1, 10]);
    expect(view.roads.features.length).toBeGreaterThan(5);
    expect(view.features.features.some(({ properties }) => properties?.kind === 'water')).toBe(true);
    const { west, east, south, north } = view.roadsBounds!;
    expect(west).toBeGreaterThan(view.elevationBounds.west);
    expect(east).toBeLessThan(view.elevationBounds.east);
    expect(south).toBeLessThan(north);
    expect(view.marks.length).toBeGreaterThan(10);
    expect(view.updates).toEqual([]);
    // What goes to the page must survive the way.
    expect(structuredClone(view)).toEqual(view);
  });

  test('a study comes with its lines: the drop edge passes the study’s own edge, the descent starts there', async () => {
    const { study, shapes } = await functions.study(kettleBend, never);
    expect(study.sentence).toMatch(/Plan as/);
    const plane = localPlane(study.edge!);
    const lines = shapes.features.map(({ geometry, properties }) => ({
      properties: properties!,
      points: (geometry as LineString).coordinates.map(([lon, lat]) => plane.toLocal({ lon: lon!, lat: lat! })),
    }));
    const own = lines.filter(({ properties }) => properties.side === study.site.side && properties.drop);
    const nearest = Math.min(...own.flatMap(({ points }) => points.map(({ x, y }) => Math.hypot(x, y))));
    // Stations are 1 m apart, and the map's own direction of the road is coarser than the section's.
    expect(nearest).toBeLessThan(0.8);
    const descent = lines.find(({ properties }) => properties.what === 'descent')!.points;
    expect(Math.hypot(descent[0]!.x, descent[0]!.y)).toBeLessThan(0.01);
    expect(Math.hypot(descent[1]!.x, descent[1]!.y)).toBeCloseTo(study.descent!.horizontalM, 1);
    expect(structuredClone({ study, shapes })).toEqual({ study, shapes });
  });

  test('what was read at a site changes its study at once, the edge on the map with it, and no other place’s', async () => {
    const reading = (id: string, quantity: string, value: number) => ({
      ...{ id, siteId: 'kettle-bend', reading: { quantity, value }, by: 'A. Vale', on: '2026-05-01' },
    });
    const measurements = [reading('m1', 'angleDeg', 60), reading('m2', 'edgeOffsetM', 2)];
    const book = restoreBook({ schema: 'brinkbook/book@1', tables: { measurements }, contested: [] }, 'The book');
    const before = await functions.study({ ...kettleBend, siteId: 'kettle-bend' }, never);
    await functions.resources(book, never);
    const after = await functions.study({ ...kettleBend, siteId: 'kettle-bend' }, never);
    expect(after.study.angle!.planAs).toBe('high');
    expect(after.study.sentence).toContain('60° measured');
    const plane = localPlane(after.study.edge!);
    const { x, y } = plane.toLocal(before.study.edge!);
    expect(Math.hypot(x, y)).toBeGreaterThan(1);
    const own = after.shapes.features.filter(({ properties }) => properties!.side === after.study.site.side);
    const points = own.flatMap(({ geometry }) => (geometry as LineString).coordinates);
    const nearest = Math.min(
      ...points.map(([lon, lat]) => {
        const at = plane.toLocal({ lon: lon!, lat: lat! });
        return Math.hypot(at.x, at.y);
      }),
    );
    expect(nearest).toBeLessThan(0.8);
    const point = await functions.study(kettleBend, never);
    expect(point.study).toEqual(before.study);
    await functions.resources(emptyBook(), never);
  });

  test('a side kept as an azimuth is the same side, and the other way round the other', async () => {
    const { study } = await functions.study(kettleBend, never);
    const azimuthDeg = study.site.sideAzimuthDeg;
    const same = await functions.study({ ...kettleBend, side: { azimuthDeg } }, never);
    expect(same.study.site.side).toBe(study.site.side);
    const other = await functions.study({ ...kettleBend, side: { azimuthDeg: (azimuthDeg + 180) % 360 } }, never);
    expect(other.study.site.side).not.toBe(study.site.side);
  });

  test('the book’s marks take the place of the file’s, and a measured line is the descent’s own', async () => {
    const { marks } = await functions.open(files, never);
    const { study } = await functions.study(kettleBend, never);
    expect(study.marks.length).toBeGreaterThan(0);
    await functions.marks([], never);
    const without = await functions.study(kettleBend, never);
    expect(without.study.marks.filter(({ id }) => marks.some((mark) => mark.id === id))).toEqual([]);
    const { edge, descent } = study;
    const line = await functions.measure([edge!, descent!.end], never);
    expect(line.distanceM).toBeCloseTo(descent!.horizontalM, 1);
    expect(line.bearingDeg).toBeCloseTo(descent!.azimuthDeg, 1);
    expect(line.riseM).toBeCloseTo(-descent!.dropM, 1);
    expect((await functions.measure([edge!, { lon: 0, lat: 0 }], never)).riseM).toBeNull();
    await functions.marks(marks, never);
  });

  test('a pinned spot and other weather are worked out on the ground that is kept', async () => {
    await functions.resources(await demoBook(), never);
    const { study } = await functions.study(kettleBend, never);
    expect(study.given.resources).toBe('book');
    const anchor = study.layouts[0]!.anchor;
    const pinned = (await functions.study({ ...kettleBend, pins: { anchor } }, never)).study;
    expect(pinned.layouts.every((layout) => layout.anchor === anchor)).toBe(true);
    const wet = (await functions.study({ ...kettleBend, conditions: { ...fairConditions, wet: true } }, never)).study;
    expect(wet.given.conditions.wet).toBe(true);
    expect(wet.profile).toEqual(study.profile);
    expect((await functions.study(kettleBend, never)).study).toEqual(study);
    await expect(functions.study({ ...kettleBend, pins: { anchor: 'nowhere' } }, never)).rejects.toThrow(/nowhere/);
    await functions.resources(emptyBook(), never);
  });

  test('a draft says of the ground what the study says, tells that better hauls may come, and leaves the study as it is', async () => {
    const ask = { ...kettleBend, at: { lon: kettleBend.at.lon + 2e-4, lat: kettleBend.at.lat } };
    const { draft, shapes } = await functions.draft(ask, never);
    const whole = await functions.study(ask, never);
    const { edge, descent, profile, angle, bench, site, sentence } = whole.study;
    expect(draft).toMatchObject({ edge, descent, profile, angle, bench, site });
    expect(shapes).toEqual(whole.shapes);
    expect(draft.layouts.length).toBeGreaterThan(0);
    expect(draft.relief).toBeNull();
    expect(draft.sentence).toContain(/Plan as [^.]+\./.exec(sentence)![0]);
    expect(draft.sentence).toContain('A better haul is still being sought.');
    expect(sentence).not.toContain('still being sought');
    // Farther along the road a draft stands on what was found near by, its sections within centimetres.
    const on = { ...ask, at: { lon: ask.at.lon + 2.5e-4, lat: ask.at.lat } };
    const near = (await functions.draft(on, never)).draft;
    const exact = (await functions.study(on, never)).study;
    expect(near.site.road).toEqual(exact.site.road);
    expect(Math.abs(near.edge!.offsetM - exact.edge!.offsetM)).toBeLessThan(0.1);
    expect(Math.abs(near.descent!.horizontalM - exact.descent!.horizontalM)).toBeLessThan(1);
    expect(Math.abs(near.angle!.governingDeg - exact.angle!.governingDeg)).toBeLessThan(0.5);
    expect(near.bench!.stations[0]!.stationM).not.toBe(exact.bench!.stations[0]!.stationM);
    // Nothing of a draft is in a later study: the same as from a worker that never made one.
    const fresh = studyFunctions(opener, bitmap);
    await fresh.open(files, never);
    expect((await fresh.study(ask, never)).study).toEqual(whole.study);
    expect((await fresh.study(on, never)).study).toEqual(exact);
  });

  test('a study that is given up ends at the next stage, and the ground that it read is used by the next', async () => {
    const ask = { ...kettleBend, at: { lon: kettleBend.at.lon - 2e-4, lat: kettleBend.at.lat } };
    const abort = new AbortController();
    const given = functions.study(ask, abort.signal);
    abort.abort();
    await expect(given).rejects.toMatchObject({ name: 'AbortError' });
    expect((await functions.study(ask, never)).study.layouts.length).toBeGreaterThan(0);
  });

  test('a tap counts for the side that it lies on', async () => {
    const { study } = await functions.study(kettleBend, never);
    const plane = localPlane(study.site);
    const off = (metres: number) => {
      const azimuth = (study.site.sideAzimuthDeg * Math.PI) / 180;
      return plane.toLonLat({ x: Math.sin(azimuth) * metres, y: Math.cos(azimuth) * metres });
    };
    const tap = (metres: number) =>
      functions.study({ ...kettleBend, at: off(metres), side: 'of the point' }, never).then((answer) => answer.study);
    expect((await tap(12)).site.side).toBe(study.site.side);
    expect((await tap(-25)).site.side).not.toBe(study.site.side);
  });

  test('where sites lie along their road agrees with their studies; off every road there is nothing', async () => {
    const { study } = await functions.study(kettleBend, never);
    const { lon, lat } = kettleBend.at;
    const positions = [
      { lon, lat },
      { lon: -127, lat: 44 },
    ];
    const [here, nowhere] = await functions.along({ positions, posts: [] }, never);
    expect(Math.abs(here!.m - study.site.road.stationM)).toBeLessThan(0.01);
    expect(here!.mile).toBeNull();
    expect(nowhere).toBeNull();
  });

  test('a place between two markers of its road has its mile by them, beyond the last one none', async () => {
    const { lon, lat } = kettleBend.at;
    const { roads } = JSON.parse(await readFile(demo('calibration.json'), 'utf8'));
    const posts = roads.map((one: { road: string; points: { mile: number; lon: number; lat: number }[] }) => ({
      road: one.road,
      ref: null,
      posts: one.points.map(({ mile, ...at }) => ({ mile, at })),
    }));
    const own = posts.find(({ road }: { road: string }) => road === 'Lantern Creek Road')!.posts;
    const positions = [...own.map(({ at }: { at: object }) => at), { lon, lat }];
    const found = await functions.along({ positions, posts }, never);
    // At a post it is that post's mile; the first and the last one have a neighbour on one side only.
    for (const i of [1, 2, 3]) expect(found[i]!.mile).toBeCloseTo(own[i].mile, 2);
    expect(found.at(-1)!.mile).toBeGreaterThan(4);
    expect(found.at(-1)!.mile).toBeLessThan(6);
    const [short] = await functions.along(
      { positions: [own[4].at], posts: [{ ...posts[0], posts: own.slice(0, 2) }] },
      never,
    );
    expect(short!.mile).toBeNull();
    expect(short!.m).toBeCloseTo(found[4]!.m, 6);
  });

  test('ground tiles carry the raster’s heights, and are handed over', async () => {
    const { roadsBounds } = await functions.open(files, never);
    const { west, north } = roadsBounds!;
    const z = 15;
    const x = Math.floor(((west + 0.01 + 180) / 360) * 2 ** z);
    const sin = Math.sin(((north - 0.004) * Math.PI) / 180);
    const y = Math.floor((0.5 - Math.log((1 + sin) / (1 - sin)) / (4 * Math.PI)) * 2 ** z);
    const tile = await functions.groundTile({ z, x, y }, never);
    expect(transferListOf(tile)).toHaveLength(1);
    const heightAt = (i: number) =>
      tile.rgba[4 * i]! * 256 + tile.rgba[4 * i + 1]! + tile.rgba[4 * i + 2]! / 256 - 32768;
    const heights = Array.from({ length: tile.size ** 2 }, (_, i) => heightAt(i));
    expect(Math.min(...heights)).toBeGreaterThan(400);
    expect(Math.max(...heights)).toBeLessThan(2000);
    const contours = await functions.contourTile({ z, x, y, units: 'us' }, never);
    expect(contours.byteLength).toBeGreaterThan(1000);
    expect(transferListOf(contours)).toEqual([contours]);
  });

  test('a book file comes with its district as its edits, whole', async () => {
    const { updates } = await functions.open({ ...files, book: demo('tamarrow.brinkbook') }, never);
    const state = emptyState();
    for (const update of updates) applyUpdate(state, readUpdate(update, 'the file'), 'the file');
    expect(snapshotOf(state)).toEqual(await demoBook());
  });

  test('a district that cannot be opened leaves the one that was', async () => {
    const broken = { ...files, roads: demo('crashes.csv') };
    await expect(functions.open(broken, never)).rejects.toThrow(/crashes\.csv/);
    const noBook = { ...files, book: demo('crashes.csv') };
    await expect(functions.open(noBook, never)).rejects.toThrow(/crashes\.csv is no book file/);
    await expect(functions.open({ ...files, elevation: [] }, never)).rejects.toMatchObject({ code: 'no-elevation' });
    expect((await functions.study(kettleBend, never)).study.sentence).toMatch(/Plan as/);
  });
});

test('before anything is open every question is answered with what to do', async () => {
  const functions = studyFunctions(opener, bitmap);
  const at = { lon: -128, lat: 44 };
  const ask = { at, side: null, rule: defaultAngleRule, units: 'us' } as const;
  await expect(functions.study(ask, never)).rejects.toMatchObject({ code: 'nothing-open' });
  await expect(functions.groundTile({ z: 1, x: 0, y: 0 }, never)).rejects.toMatchObject({ code: 'nothing-open' });
  await expect(functions.contourTile({ z: 1, x: 0, y: 0, units: 'us' }, never)).rejects.toMatchObject({
    code: 'nothing-open',
  });
});
