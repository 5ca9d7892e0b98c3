import type { AngleClass } from '../../book/index.ts';
import type { DistrictBounds, LonLat } from '../../geo/index.ts';
import type { Calibration, Route } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { packJson, unpackJson } from './json-bytes.ts';
import type { KeptStore } from './kept-store.ts';

/** A surveyed site as the call view lists and finds it. */
export interface CallSite extends LonLat {
  readonly id: string;
  readonly name: string;
  readonly road: string | null;
  /** Station on the route of that road in the pack, metres; null where the site's road is not in it. */
  readonly stationM: number | null;
  readonly mile: number | null;
  /** What lies beside the mile, a sentence; null where the posts agree with the road. */
  readonly mileNote: string | null;
  readonly sideAzimuthDeg: number;
  readonly elevationM: number | null;
  /** Null where the site has no angle (no drop found, or a structure), or is not worked out yet. */
  readonly planAs: AngleClass | null;
  readonly undecided: boolean;
  /** Day of the last field check; null where nobody checked. */
  readonly checkedOn: string | null;
  /** What changed since somebody was there, by the book: sentences that head the plan. */
  readonly stops: readonly string[];
}

/** A named road with its line, and its posts where the book has any. */
export interface CallRoad extends Omit<Route, 'line' | 'stationM' | 'legs'> {
  readonly ref: string | null;
  readonly line: readonly number[];
  readonly stationM: readonly number[];
  readonly calibration: Calibration;
}

/** Weather of which each site's study is kept. */
export const keptWeathers = ['dry', 'wet', 'ice'] as const;
export type Weather = (typeof keptWeathers)[number];

/** Everything that the call view needs before a site is chosen. */
export interface CallPack {
  readonly schema: 'brinkbook/call@1';
  readonly district: string;
  /** True for the demo: the screen says that it is made up. */
  readonly invented: boolean;
  /** When the pack was finished, milliseconds since 1970. */
  readonly madeAtMs: number;
  /** When what it holds was published, milliseconds since 1970; left out where it was worked out on this device. */
  readonly publishedAtMs?: number;
  /** Names what the pack was made from: a changed book or program makes another. */
  readonly madeFrom: string;
  /** Names the district on this device: an own one by its kept files, or 'published'; left out for the demo. */
  readonly from?: string;
  /** Its rasters lie on this device as files: no pages of them are kept. */
  readonly groundHere?: boolean;
  readonly units: UnitSystem;
  readonly bounds: DistrictBounds;
  /** Ids of sites of which no study could be made; left out where there are none. */
  readonly withoutStudy?: readonly string[];
  /** In road order: by road, then along it. */
  readonly sites: readonly CallSite[];
  readonly roads: readonly CallRoad[];
}

/** Name of the demo district, and of the browser's book that the desk keeps for it. */
export const DEMO_DISTRICT = 'demo';

const PACK = 'call/pack';
const studyKey = (id: string, weather: Weather): string => `call/study/${id}/${weather}`;

/** Which district a pack is of. */
export const districtOf = ({ from }: Pick<CallPack, 'from'>): string => from ?? DEMO_DISTRICT;

/** The pack on this device; null where none is kept, or one of another version of the format. */
export async function readPack(store: KeptStore): Promise<CallPack | null> {
  const entry = await store.read(PACK);
  if (!entry) return null;
  const pack = (await unpackJson(entry.bytes)) as CallPack;
  return pack.schema === 'brinkbook/call@1' ? pack : null;
}

/** Keeps a pack; to be called last, when everything that it names is kept. */
export const writePack = async (store: KeptStore, pack: CallPack): Promise<void> =>
  store.write(PACK, await packJson(pack));

/** Forgets the pack and all studies: another district takes their place. */
export async function dropPack(store: KeptStore): Promise<void> {
  await store.remove(PACK);
  await dropStudiesBut(store, new Set());
}

/** A site's kept study, and when it was kept; null where there is none. */
export async function readKeptStudy(store: KeptStore, id: string, weather: Weather): Promise<KeptStudy | null> {
  const entry = await store.read(studyKey(id, weather));
  return entry && { study: (await unpackJson(entry.bytes)) as Study, atMs: entry.atMs };
}

export interface KeptStudy {
  readonly study: Study;
  readonly atMs: number;
}

export const writeKeptStudy = async (store: KeptStore, id: string, weather: Weather, study: Study): Promise<void> =>
  store.write(studyKey(id, weather), await packJson(study));

/** Ids of the sites with a kept study. */
export async function keptStudyIds(store: KeptStore): Promise<Set<string>> {
  const keys = await store.keys('call/study/');
  return new Set(keys.filter((key) => key.endsWith('/dry')).map((key) => key.split('/')[2]!));
}

/** Takes away studies of sites that are no longer in the book. */
export async function dropStudiesBut(store: KeptStore, ids: ReadonlySet<string>): Promise<void> {
  const keys = await store.keys('call/study/');
  await Promise.all(keys.filter((key) => !ids.has(key.split('/')[2]!)).map((key) => store.remove(key)));
}
