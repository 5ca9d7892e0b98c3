import type { FeatureCollection } from 'geojson';
import type { Mark } from '../book/index.ts';
import {
  type ByteSource,
  type DecodePool,
  type ElevationOptions,
  type ElevationSource,
  type LonLatBox,
  memorySource,
  openElevation,
  readBookFile,
  readMarks,
  readRoads,
} from '../io/index.ts';
import { indexRoads, type RoadIndex } from '../road/index.ts';
import type { SurfaceInfo } from '../terrain/index.ts';
import { UserError } from '../units/index.ts';
import { mapFeatures, roadFeatures, roadsBounds } from './road-features.ts';
import { finestZoom } from './tiles/index.ts';

/** An address on the own host, or a file that a person picked. */
export type Origin = string | File;

/** What to open: rasters (any number, finest wins), roads, marks; `options` say what the rasters do not say themselves. */
export interface DistrictFiles {
  readonly elevation: readonly Origin[];
  readonly options: ElevationOptions;
  /** What is known of each raster by itself, in their order; goes before `options`. */
  readonly each?: readonly ElevationOptions[];
  readonly roads: Origin | null;
  readonly marks: Origin | null;
  /** A whole book file that comes with the district; left out where none does. */
  readonly book?: Origin;
}

/** What a map and a page need to know of an opened district; GeoJSON in WGS 84 longitude, latitude. */
export interface DistrictView {
  readonly elevation: readonly SurfaceInfo[];
  readonly elevationBounds: LonLatBox;
  /** Zoom at which the finest raster's cells fill a pixel of its map tiles. */
  readonly tileMaxZoom: number;
  readonly roads: FeatureCollection;
  readonly features: FeatureCollection;
  /** Box of the roads that lie on the elevation, null where there are none. */
  readonly roadsBounds: LonLatBox | null;
  readonly marks: readonly Mark[];
  /** Every edit of the book file, for the store to check and take in; none where no such file was given. */
  readonly updates: readonly unknown[];
}

/** An opened district as the worker keeps it. */
export interface District {
  readonly sources: readonly ElevationSource[];
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  readonly view: DistrictView;
}

/** How bytes are reached where the code runs: in a browser's worker, or in a test. */
export interface Opener {
  bytes(origin: Origin): ByteSource;
  /** A small file at once. */
  whole(origin: Origin, signal: AbortSignal): Promise<Uint8Array<ArrayBuffer>>;
  readonly pool: DecodePool | null;
}

const textOf = async (origin: Origin, opener: Opener, signal: AbortSignal): Promise<string> =>
  new TextDecoder().decode(await opener.whole(origin, signal));

const nameOf = (origin: Origin): string =>
  typeof origin === 'string' ? (origin.split('/').at(-1) ?? origin) : origin.name;

/** Opens a district whole or not at all: whatever fails, what was opened before stays as it was. */
export async function openDistrict(files: DistrictFiles, opener: Opener, signal: AbortSignal): Promise<District> {
  if (files.elevation.length === 0) {
    throw new UserError('no-elevation', 'No elevation file was given; choose a GeoTIFF of bare-earth heights.');
  }
  const sources: ElevationSource[] = [];
  // It is on its way while the rasters are; a failure is told below.
  const reading = files.book ? updatesOf(files.book, opener, signal) : Promise.resolve([]);
  reading.catch(() => {});
  try {
    for (const [i, origin] of files.elevation.entries()) {
      const options = { ...files.options, ...files.each?.[i] };
      sources.push(await openElevation(opener.bytes(origin), options, opener.pool ?? undefined, signal));
    }
    sources.sort((a, b) => a.info.cellM - b.info.cellM);
    const network = files.roads
      ? readRoads(await textOf(files.roads, opener, signal), nameOf(files.roads))
      : { ways: [], features: [] };
    const marks = files.marks ? readMarks(await textOf(files.marks, opener, signal), nameOf(files.marks)) : [];
    const bounds = unionOf(sources.map((source) => source.bounds));
    const view: DistrictView = {
      elevation: sources.map((source) => source.info),
      elevationBounds: bounds,
      tileMaxZoom: finestZoom(sources[0]!.info.cellM, (bounds.south + bounds.north) / 2),
      roads: roadFeatures(network),
      features: mapFeatures(network),
      roadsBounds: roadsBounds(network, (at) => sources[0]!.covers(at)),
      marks,
      updates: await reading,
    };
    return { sources, roads: indexRoads(network), marks, view };
  } catch (error) {
    await closeAll(sources);
    throw error;
  }
}

async function updatesOf(origin: Origin, opener: Opener, signal: AbortSignal): Promise<unknown[]> {
  const source = memorySource(await opener.whole(origin, signal), nameOf(origin));
  const { log } = await readBookFile(source, signal);
  return (log ?? []).map((line) => JSON.parse(line));
}

/** Lets go of the files of a district. */
export const closeAll = async (sources: readonly ElevationSource[]): Promise<void> => {
  await Promise.allSettled(sources.map((source) => source.close()));
};

const unionOf = (boxes: readonly LonLatBox[]): LonLatBox => ({
  west: Math.min(...boxes.map((box) => box.west)),
  south: Math.min(...boxes.map((box) => box.south)),
  east: Math.max(...boxes.map((box) => box.east)),
  north: Math.max(...boxes.map((box) => box.north)),
});
