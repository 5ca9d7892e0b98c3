import type { Feature, FeatureCollection } from 'geojson';
import { type AngleRule, type Book, live, type Mark, worseOfContested } from '../book/index.ts';
import { type LonLat, localPlane } from '../geo/index.ts';
import { groundOfSite, type LonLatBox, type StudyRequest } from '../io/index.ts';
import { type Conditions, fairConditions } from '../rigging/index.ts';
import { roadAt } from '../road/index.ts';
import {
  completeStudy,
  fieldOfBook,
  type GroundWork,
  type Pins,
  resourcesOfBook,
  type Study,
  shippedResources,
  standUp,
} from '../study/index.ts';
import { type UnitSystem, UserError } from '../units/index.ts';
import { breath } from './breath.ts';
import {
  closeAll,
  type District,
  type DistrictFiles,
  type DistrictView,
  type Opener,
  openDistrict,
} from './district.ts';
import { draftKeeper } from './draft-keeper.ts';
import { type Measured, measure } from './measure.ts';
import { type AlongAsk, type PlaceAlong, placesAlong } from './places-along.ts';
import { type RoadsideAsk, type RoadsideReader, roadsideReader, type StretchInView } from './roadside/index.ts';
import { type SideAsked, sideOfAsk } from './side-of-ask.ts';
import { studyShapes } from './study-shapes.ts';
import { contourTiles, TILE_SIZE, type TileAddress, terrarium, tileHeights } from './tiles/index.ts';
import { transferring } from './transfer.ts';

/** What the page asks of a study. */
export interface StudyAsk {
  readonly at: LonLat;
  readonly side: SideAsked;
  readonly rule: AngleRule;
  readonly units: UnitSystem;
  readonly patient?: LonLat | null;
  readonly conditions?: Conditions;
  readonly patients?: number;
  /** Ids of spots or marks that somebody fixed. */
  readonly pins?: Pins;
  /** The site of the book whose readings and sign-offs count; null for any other roadside. */
  readonly siteId?: string | null;
  /** YYYY-MM-DD; what is due is told by it. */
  readonly today?: string;
}

export interface StudyAnswer {
  readonly study: Study;
  readonly shapes: FeatureCollection;
  /** Time in the worker, milliseconds, ground reading included. */
  readonly tookMs: number;
}

/** To be looked at while a point moves, and no more: nothing that takes a study takes this. */
export interface DraftAnswer extends Omit<StudyAnswer, 'study'> {
  readonly draft: Study;
}

const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

/** Ground tiles kept for their neighbours' contours. */
const KEPT_TILES = 120;

/** What a worker of this kind can be asked; tests call the same functions directly. */
export interface StudyFunctions<Tile> {
  /** Opens elevation, roads and marks in place of what was open before; on failure what was open stays. */
  open(files: DistrictFiles, signal: AbortSignal): Promise<DistrictView>;
  /** One site's study and its lines for the map. */
  study(ask: StudyAsk, signal: AbortSignal): Promise<StudyAnswer>;
  /** A quick one for a point that moves: its layouts are sought among few places, so that better ones may come with `study`. */
  draft(ask: StudyAsk, signal: AbortSignal): Promise<DraftAnswer>;
  /** Other marks on the same district: the book's, in place of the file's. */
  marks(marks: readonly Mark[], signal: AbortSignal): Promise<void>;
  /** The book's fleet, kit, arrivals, response table, rates, events, readings and sign-offs in place of the shipped ones; what it lacks stays. */
  resources(book: Book, signal: AbortSignal): Promise<void>;
  /** Length, bearing and rise from one position to another. */
  measure(ends: readonly [LonLat, LonLat], signal: AbortSignal): Promise<Measured>;
  /** Where along its road each position lies, null where no road is near. */
  along(ask: AlongAsk, signal: AbortSignal): Promise<(PlaceAlong | null)[]>;
  /** A map tile of the ground, its heights as terrarium colours. */
  groundTile(tile: TileAddress, signal: AbortSignal): Promise<Tile>;
  /** A map tile of contours, Mapbox vector tile bytes, in feet or metres. */
  contourTile(tile: TileAddress & { readonly units: UnitSystem }, signal: AbortSignal): Promise<ArrayBuffer>;
  /** The stretches of road in a box whose roadside can be read. */
  stretches(box: LonLatBox, signal: AbortSignal): Promise<StretchInView[]>;
  /** Bench edges and class bands beside one stretch, as GeoJSON lines; other calls are answered meanwhile. */
  roadside(ask: RoadsideAsk, signal: AbortSignal): Promise<Feature[]>;
}

/** The functions, with nothing opened yet. `toBitmap` turns RGBA bytes of a square tile into what a map takes. */
export function studyFunctions<Tile extends object>(
  opener: Opener,
  toBitmap: (rgba: Uint8ClampedArray<ArrayBuffer>, size: number) => Promise<Tile>,
): StudyFunctions<Tile> {
  let district: District | null = null;
  let tiles = new Map<string, Promise<Float32Array>>();
  let contours: ReturnType<typeof contourTiles> | null = null;
  let beside: RoadsideReader | null = null;
  let book: Book | null = null;
  /** The newest ground, worked out or on its way: whoever asks about it shares it. */
  let last: { readonly key: string; readonly work: Promise<GroundWork> } | null = null;
  const drafts = draftKeeper();
  const opened = (): District => {
    if (!district) throw new UserError('nothing-open', 'No district is open; open elevation and roads first.');
    return district;
  };
  const heightsOf = (tile: TileAddress): Promise<Float32Array> => {
    const key = `${tile.z}/${tile.x}/${tile.y}`;
    const kept = tiles.get(key);
    if (kept) return kept;
    const made = tileHeights(opened().sources, tile);
    made.catch(() => tiles.delete(key));
    tiles.set(key, made);
    if (tiles.size > KEPT_TILES) tiles.delete(tiles.keys().next().value!);
    return made;
  };
  /** A question in the terms of the study, and what its ground hangs on. */
  const questionFor = (ask: StudyAsk) => {
    const { roads, marks } = opened();
    const place = roadAt(roads, ask.at);
    if (!place.ok) throw place.error;
    const side = sideOfAsk(ask.side, ask.at, place.value);
    const {
      at,
      rule,
      units,
      patient = null,
      conditions = fairConditions,
      patients = 1,
      pins = {},
      siteId = null,
    } = ask;
    const road = place.value.route.name;
    const resources = book ? resourcesOfBook(book, road) : shippedResources;
    const events = book ? live(book, 'events') : [];
    const field = book && fieldOfBook(book, siteId, ask.today ?? dayOf(new Date()));
    const request = {
      ...{ roads, marks, at, side, patient, rule, units, conditions, patients, pins, resources, events, field },
    };
    return { place: place.value, request, key: JSON.stringify([at, side, patient, rule, siteId]) };
  };
  /** The ground stays while a spot is dragged or the weather changes. */
  const groundFor = (key: string, request: StudyRequest): Promise<GroundWork> => {
    if (last?.key === key) return last.work;
    const mine = { key, work: groundOfSite(opened().sources, request) };
    last = mine;
    // A failure is not remembered: the next question tries again.
    mine.work.catch(() => {
      if (last === mine) last = null;
    });
    return mine.work;
  };
  const forget = (): void => {
    last = null;
    drafts.forget();
  };
  return {
    async open(files, signal) {
      const next = await openDistrict(files, opener, signal);
      if (signal.aborted) {
        await closeAll(next.sources);
        signal.throwIfAborted();
      }
      const before = district;
      district = next;
      book = null;
      forget();
      tiles = new Map();
      const { sources, roads, marks, view } = next;
      const { south, north } = view.elevationBounds;
      contours = contourTiles(heightsOf, sources[0]!.info.cellM, (south + north) / 2);
      beside = roadsideReader(sources, roads, marks);
      if (before) await closeAll(before.sources);
      return view;
    },
    async study(ask, signal) {
      const began = performance.now();
      const { place, request, key } = questionFor(ask);
      const ground = groundFor(key, request);
      const found = await ground;
      await breath(signal);
      const work = standUp(found, request);
      if (last?.work === ground) last = { key, work: Promise.resolve(work) };
      await breath(signal);
      const study = completeStudy(work, { ...request, ground: work.ground });
      drafts.learn(study);
      const shapes = studyShapes(study, place, localPlane(ask.at));
      return { study, shapes, tookMs: performance.now() - began };
    },
    async draft(ask) {
      const began = performance.now();
      const { place, request, key } = questionFor(ask);
      const draft = await drafts.draft(opened().sources, request, last?.key === key ? last.work : null);
      const shapes = studyShapes(draft, place, localPlane(ask.at));
      return { draft, shapes, tookMs: performance.now() - began };
    },
    async marks(marks) {
      district = { ...opened(), marks };
      forget();
      beside = roadsideReader(district.sources, district.roads, marks);
    },
    async resources(given) {
      opened();
      book = worseOfContested(given);
      forget();
    },
    async measure(ends, signal) {
      return measure(opened().sources, ends, signal);
    },
    async along(ask) {
      return placesAlong(opened().roads, ask);
    },
    async groundTile(tile) {
      const bitmap = await toBitmap(terrarium(await heightsOf(tile)), TILE_SIZE);
      return transferring(bitmap, [bitmap as unknown as Transferable]);
    },
    async contourTile({ units, ...tile }) {
      opened();
      const bytes = await contours!(tile, units);
      return transferring(bytes, [bytes]);
    },
    async stretches(box) {
      opened();
      return beside!.inView(box);
    },
    async roadside(ask, signal) {
      opened();
      return beside!.read(ask, signal);
    },
  };
}
