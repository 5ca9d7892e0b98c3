import type { Feature, FeatureCollection } from 'geojson';
import type { GeoJSONSource, Map as MapView } from 'maplibre-gl';
import type { AngleRule } from '../book/index.ts';
import type { LonLatBox } from '../io/index.ts';
import type { StretchInView } from '../workers/index.ts';

/** Who reads the roadside: a worker. */
export interface RoadsideTiles {
  stretches(box: LonLatBox, signal: AbortSignal): Promise<StretchInView[]>;
  read(key: string, rule: AngleRule, signal: AbortSignal): Promise<Feature[]>;
  /** Stopped from the start, as somebody left it. */
  readonly stopped?: boolean;
  /** Told when somebody stops the reading or lets it go on. */
  onStopped?(is: boolean): void;
}

/** How far the reading has come; `stopped` where a person stopped it. */
export interface RoadsideProgress {
  readonly done: number;
  readonly of: number;
  readonly stopped: boolean;
}

/** Keeps bench edges and class bands drawn for the roads in view. */
export interface RoadsideLayer {
  /** What is drawn now, for a new style. */
  data(): FeatureCollection;
  setRule(rule: AngleRule): void;
  /** Forgets everything: other roads or another ground were opened. */
  reset(): void;
  /** Waits while a finger drags something that the computing is needed for. */
  pause(is: boolean): void;
  stop(): void;
  goOn(): void;
  remove(): void;
}

/** Roads farther out than this are too many to read, and a band too thin to see. */
export const READ_FROM_ZOOM = 13.5;
/** Stretches kept drawn outside the view. */
const KEPT = 240;
/** Shortest time between two drawings of what has been read, milliseconds. */
const DRAW_EVERY_MS = 400;
/** Reading begins when the map has rested for so long, milliseconds. */
const REST_MS = 600;

/** Reads what is in view, nearest to its middle first, whenever the map comes to rest. Without a reader it does nothing. */
export function roadsideLayer(
  map: MapView,
  reader: RoadsideTiles | null,
  first: AngleRule,
  onProgress: (progress: RoadsideProgress) => void,
): RoadsideLayer {
  const read = new Map<string, Feature[]>();
  let rule = first;
  let abort: AbortController | null = null;
  let paused = false;
  let stopped = reader?.stopped ?? false;
  let drawing: ReturnType<typeof setTimeout> | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const data = (): FeatureCollection => ({ type: 'FeatureCollection', features: [...read.values()].flat() });
  const draw = (): void => {
    drawing ??= setTimeout(() => {
      drawing = undefined;
      map.getSource<GeoJSONSource>('roadside')?.setData(data());
    }, DRAW_EVERY_MS);
  };
  const giveUp = (): void => {
    abort?.abort();
    abort = null;
  };

  async function follow(): Promise<void> {
    giveUp();
    if (!reader || paused || stopped || map.getZoom() < READ_FROM_ZOOM) return;
    const mine = new AbortController();
    abort = mine;
    try {
      const found = await reader.stretches(boxOf(map), mine.signal);
      const missing = found.filter(({ key }) => !touch(key)).sort((a, b) => away(map, a) - away(map, b));
      let done = found.length - missing.length;
      forget(found.length);
      for (const { key } of missing) {
        onProgress({ done, of: found.length, stopped: false });
        const features = await reader.read(key, rule, mine.signal);
        if (mine !== abort) return;
        read.set(key, features);
        done++;
        draw();
      }
      onProgress({ done, of: found.length, stopped: false });
    } catch {
      // Given up for a newer view, or one stretch cannot be read: what was read stays drawn, the next view tries again.
    }
  }

  /** True where a stretch is read already; it then counts as used last. */
  function touch(key: string): boolean {
    const features = read.get(key);
    if (!features) return false;
    read.delete(key);
    read.set(key, features);
    return true;
  }

  function forget(inView: number): void {
    for (const key of read.keys()) {
      if (read.size <= inView + KEPT) return;
      read.delete(key);
    }
  }

  // What a person looks at comes first: ground, point, study.
  const onRest = (): void => {
    giveUp();
    clearTimeout(resting);
    resting = setTimeout(() => void follow(), REST_MS);
  };
  if (stopped) onProgress({ done: 0, of: 0, stopped });
  map.on('moveend', onRest);
  map.once('load', onRest);
  return {
    data,
    setRule(next) {
      if (next.lowMaxDeg === rule.lowMaxDeg && next.highMinDeg === rule.highMinDeg) return;
      rule = next;
      this.reset();
    },
    reset() {
      read.clear();
      draw();
      void follow();
    },
    pause(is) {
      paused = is;
      void follow();
    },
    stop() {
      stopped = true;
      reader?.onStopped?.(true);
      giveUp();
      onProgress({ done: 0, of: 0, stopped: true });
    },
    goOn() {
      stopped = false;
      reader?.onStopped?.(false);
      void follow();
    },
    remove() {
      giveUp();
      clearTimeout(drawing);
      clearTimeout(resting);
      map.off('moveend', onRest);
    },
  };
}

function boxOf(map: MapView): LonLatBox {
  const bounds = map.getBounds();
  return { west: bounds.getWest(), south: bounds.getSouth(), east: bounds.getEast(), north: bounds.getNorth() };
}

function away(map: MapView, { middle }: StretchInView): number {
  const { lng, lat } = map.getCenter();
  return Math.hypot((middle.lon - lng) * Math.cos((lat * Math.PI) / 180), middle.lat - lat);
}
