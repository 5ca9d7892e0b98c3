import type { FeatureCollection } from 'geojson';
import type { Mark } from '../book/index.ts';
import {
  type ByteSource,
  type DecodePool,
  type DistrictResources,
  type ElevationOptions,
  type ElevationSource,
  type LonLatBox,
  openElevation,
  readMarks,
  readResources,
  readRoads,
  readSites,
  resourcesOn,
  type SiteList,
} from '../io/index.ts';
import { indexRoads, type RoadIndex } from '../road/index.ts';
import { type Resources, shippedResources } from '../study/index.ts';
import type { SurfaceInfo } from '../terrain/index.ts';
import { UserError } from '../units/index.ts';
import { type RoadPosts, readPosts } from './call/read-posts.ts';
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
  readonly sites: Origin | null;
  /** Mile markers of the roads; they go into the book with the sites. */
  readonly posts?: Origin | null;
  /** Fleet, kit, stations and response of the district, null for the shipped ones. */
  readonly resources?: ResourceOrigins | null;
}

export interface ResourceOrigins {
  readonly fleet: Origin;
  readonly kit: Origin;
  readonly stations: Origin;
  readonly response: Origin;
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
  /** The district's name and its sites, null where no list of sites was given. */
  readonly list: SiteList | null;
  /** Mile markers by road; none where no file of them was given. */
  readonly posts: readonly RoadPosts[];
}

/** An opened district as the worker keeps it. */
export interface District {
  readonly sources: readonly ElevationSource[];
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  /** Who comes to a road, with what: the same object each time for the same road. */
  resourcesFor(road: string | null): Resources;
  readonly view: DistrictView;
}

/** How bytes are reached where the code runs: in a browser's worker, or in a test. */
export interface Opener {
  bytes(origin: Origin): ByteSource;
  text(origin: Origin, signal: AbortSignal): Promise<string>;
  readonly pool: DecodePool | null;
}

export const nameOf = (origin: Origin): string =>
  typeof origin === 'string' ? (origin.split('/').at(-1) ?? origin) : origin.name;

/** Opens a district whole or not at all: whatever fails, what was opened before stays as it was. */
export async function openDistrict(files: DistrictFiles, opener: Opener, signal: AbortSignal): Promise<District> {
  if (files.elevation.length === 0) {
    throw new UserError('no-elevation', 'No elevation file was given; choose a GeoTIFF of bare-earth heights.');
  }
  const sources: ElevationSource[] = [];
  try {
    for (const [i, origin] of files.elevation.entries()) {
      const options = { ...files.options, ...files.each?.[i] };
      sources.push(await openElevation(opener.bytes(origin), options, opener.pool ?? undefined, signal));
    }
    sources.sort((a, b) => a.info.cellM - b.info.cellM);
    const network = files.roads
      ? readRoads(await opener.text(files.roads, signal), nameOf(files.roads))
      : { ways: [], features: [] };
    const marks = files.marks ? readMarks(await opener.text(files.marks, signal), nameOf(files.marks)) : [];
    const list = files.sites ? readSites(await opener.text(files.sites, signal), nameOf(files.sites)) : null;
    const posts = files.posts ? readPosts(await opener.text(files.posts, signal), nameOf(files.posts)) : [];
    const resources = files.resources ? await resourcesFrom(files.resources, opener, signal) : null;
    const bounds = unionOf(sources.map((source) => source.bounds));
    const view: DistrictView = {
      elevation: sources.map((source) => source.info),
      elevationBounds: bounds,
      tileMaxZoom: finestZoom(sources[0]!.info.cellM, (bounds.south + bounds.north) / 2),
      roads: roadFeatures(network),
      features: mapFeatures(network),
      roadsBounds: roadsBounds(network, (at) => sources[0]!.covers(at)),
      marks,
      list,
      posts,
    };
    return { sources, roads: indexRoads(network), marks, resourcesFor: resourcesByRoad(resources), view };
  } catch (error) {
    await closeAll(sources);
    throw error;
  }
}

function resourcesByRoad(district: DistrictResources | null): District['resourcesFor'] {
  const found = new Map<string | null, Resources>();
  return (road) => {
    const known = found.get(road);
    if (known || !district) return known ?? shippedResources;
    const made = resourcesOn(district, road);
    found.set(road, made);
    return made;
  };
}

async function resourcesFrom(
  origins: ResourceOrigins,
  opener: Opener,
  signal: AbortSignal,
): Promise<DistrictResources> {
  const named = async (origin: Origin) => ({ name: nameOf(origin), text: await opener.text(origin, signal) });
  return readResources({
    fleet: await named(origins.fleet),
    kit: await named(origins.kit),
    stations: await named(origins.stations),
    response: await named(origins.response),
  });
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
