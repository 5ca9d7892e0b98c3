import type { Map as MapView } from 'maplibre-gl';
import { UserError } from '../units/index.ts';
import { BASE, type Basemap, type BasemapParts, loadBasemap } from './basemap/index.ts';

/** A failure as the map library tells it: with the source that failed, where it was one. */
export interface MapFailure {
  readonly error: Error;
  readonly sourceId?: string;
}

/** The basemap of a map: loaded, in place, or failed; a failure never takes the own map away. */
export interface BasemapControl {
  parts(): BasemapParts | null;
  set(basemap: Basemap | null): Promise<void>;
  /** What its sources say of whose data they are. */
  attributions(): string[];
  /** True where an error of the map is the basemap's own; it is then told once. */
  takes(failure: MapFailure): boolean;
  remove(): void;
}

export interface BasemapEvents {
  /** The style must be drawn anew, with or without the basemap. */
  onChange(): void;
  /** One line for a person, null where there is nothing to tell any more. */
  onProblem(sentence: string | null): void;
}

/** A basemap that has brought nothing for so long is told, milliseconds. */
const SLOW_MS = 5000;
const GOES_ON = 'The map goes on without it.';

/** Watches over the basemap of a map. */
export function basemapControl(map: MapView, events: BasemapEvents): BasemapControl {
  let parts: BasemapParts | null = null;
  let abort: AbortController | null = null;
  let told = false;
  let seen = false;
  let slow: ReturnType<typeof setTimeout> | undefined;
  let slowTold = false;
  const onData = ({ sourceId, tile }: { sourceId?: string; tile?: { state?: string } }): void => {
    if (seen || !sourceId?.startsWith(BASE) || tile?.state !== 'loaded') return;
    seen = true;
    clearTimeout(slow);
    if (slowTold) events.onProblem(null);
  };
  // A tile that its host does not have is no error to the map library; where none comes at all, a person should know.
  const onSlow = (): void => {
    if (!parts || seen || told) return;
    slowTold = true;
    events.onProblem(`The basemap has brought no picture of this place yet. ${GOES_ON}`);
  };
  map.on('sourcedata', onData);
  const tell = (sentence: string): void => {
    if (!told) events.onProblem(sentence);
    told = true;
  };
  return {
    parts: () => parts,
    async set(basemap) {
      abort?.abort();
      const mine = new AbortController();
      abort = mine;
      told = false;
      seen = false;
      slowTold = false;
      clearTimeout(slow);
      events.onProblem(null);
      const before = parts;
      let next: BasemapParts | null = null;
      if (basemap) {
        try {
          next = await loadBasemap(basemap, mine.signal);
        } catch (error) {
          if (mine.signal.aborted) return;
          const why = error instanceof UserError ? error.message : `The basemap cannot be read (${messageOf(error)}).`;
          tell(`${why} ${GOES_ON}`);
        }
        if (mine.signal.aborted) return;
      }
      parts = next;
      if (parts) slow = setTimeout(onSlow, SLOW_MS);
      if (parts !== before) events.onChange();
    },
    attributions() {
      if (!parts) return [];
      const ofSources = Object.keys(parts.sources).map((id) => map.getSource(id)?.attribution ?? '');
      return [parts.attribution, ...ofSources];
    },
    takes({ error, sourceId }) {
      if (!parts) return false;
      const own = sourceId?.startsWith(BASE) || namesPart(parts, messageOf(error));
      if (own) {
        tell(
          `The basemap gives no picture here: no signal, or its host does not answer (${messageOf(error)}). ${GOES_ON}`,
        );
      }
      return Boolean(own);
    },
    remove() {
      abort?.abort();
      map.off('sourcedata', onData);
      clearTimeout(slow);
    },
  };
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** True where a message names an address of the basemap: icons and layers are told without their source. */
function namesPart({ sprite, sources }: BasemapParts, message: string): boolean {
  if (message.includes(BASE) || (sprite !== null && message.includes(sprite))) return true;
  return Object.values(sources).some((source) => 'url' in source && source.url && message.includes(String(source.url)));
}
