import type { Feature } from 'geojson';
import type { AngleRule, Mark } from '../../book/index.ts';
import { type LonLat, localPlane } from '../../geo/index.ts';
import { type ElevationSource, type LonLatBox, readGround } from '../../io/index.ts';
import type { RoadIndex } from '../../road/index.ts';
import { roadsideBand } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import { type RoadStretch, roadStretches } from './road-stretches.ts';
import { roadsideFeatures } from './roadside-features.ts';

/** A stretch of road as the map asks for it. */
export interface StretchInView {
  readonly key: string;
  readonly middle: LonLat;
}

export interface RoadsideAsk {
  readonly key: string;
  readonly rule: AngleRule;
}

/** Distance between the descents that are worked out along the road, metres. */
const EVERY_M = 5;
/** Ground beyond the ends of a stretch: a fall line is at most 300 m long, metres. */
const BEYOND_M = 320;
/** The reader lets other work of its thread through after this long, milliseconds. */
const BREATH_MS = 12;

/** Tells the roadsides of a district stretch by stretch; stretches that were read are kept, newest longest. */
export interface RoadsideReader {
  /** Stretches of road in a box that lie on the elevation. */
  inView(box: LonLatBox): StretchInView[];
  /** Edges and class bands of a stretch; gives up at the next descent once `signal` is aborted. */
  read(ask: RoadsideAsk, signal: AbortSignal): Promise<Feature[]>;
}

const KEPT_STRETCHES = 2000;

/** A reader over opened elevation and roads. */
export function roadsideReader(
  sources: readonly ElevationSource[],
  roads: RoadIndex,
  marks: readonly Mark[],
): RoadsideReader {
  const kept = new Map<string, Feature[]>();
  let byKey: Map<string, RoadStretch> | null = null;
  const stretches = (): Map<string, RoadStretch> => {
    byKey ??= new Map(roadStretches(roads).map((stretch) => [stretch.key, stretch]));
    return byKey;
  };
  return {
    inView(box) {
      return [...stretches().values()]
        .filter((stretch) => meet(stretch.box, box) && sources.some((source) => source.covers(stretch.middle)))
        .map(({ key, middle }) => ({ key, middle }));
    },
    async read({ key, rule }, signal) {
      const name = `${key} ${rule.lowMaxDeg}/${rule.highMinDeg}`;
      const found = kept.get(name);
      if (found) return found;
      const stretch = stretches().get(key);
      if (!stretch) throw new UserError('no-stretch', 'This road is no longer open; move the map to read it again.');
      const { route, fromM, toM, middle } = stretch;
      const half = (toM - fromM) / 2 + BEYOND_M;
      const ground = await readGround(sources, localPlane(middle), { x: 0, y: 0 }, half, signal);
      const work = roadsideBand({ ground, roads, marks, route, fromM, toM, everyM: EVERY_M, rule });
      const features = roadsideFeatures(await inBreaths(work, signal));
      kept.set(name, features);
      if (kept.size > KEPT_STRETCHES) kept.delete(kept.keys().next().value!);
      return features;
    },
  };
}

/** Runs a generator to its end, letting the thread's other messages through now and then. */
async function inBreaths<T>(work: Generator<void, T>, signal: AbortSignal): Promise<T> {
  let since = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - since < BREATH_MS) continue;
    await new Promise((resolve) => setTimeout(resolve, 0));
    signal.throwIfAborted();
    since = performance.now();
  }
}

const meet = (a: LonLatBox, b: LonLatBox): boolean =>
  a.west <= b.east && a.east >= b.west && a.south <= b.north && a.north >= b.south;
