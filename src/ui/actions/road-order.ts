import { type PlaceAlong, postsOfBook, type RoadPosts } from '../../workers/index.ts';
import { useBook, useDistrict, useReads } from '../state/index.ts';
import type { Deps } from './deps.ts';

/** Sites asked for at once: the worker draws the map between them. */
const CHUNK = 200;
const WAIT_MS = 150;

/** Keeps where along its road each site lies, for the list's order, in step with book and district. */
export function followRoadOrder({ workers }: Pick<Deps, 'workers'>): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let busy = false;
  let posts: readonly RoadPosts[] = [];
  /** Places as they were asked for: a site that moved is asked for again. */
  let asked = new Map<string, object>();
  /** What has been answered, told once it is whole: a list that is sorted again and again cannot be read. */
  let found = new Map<string, PlaceAlong | null>();

  const schedule = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void next(), WAIT_MS);
  };

  async function next(): Promise<void> {
    if (busy || !useDistrict.getState().district) return;
    const left = [...useBook.getState().sites.values()].filter(({ id, place }) => asked.get(id) !== place);
    if (left.length === 0) {
      if (found.size > 0) useReads.setState({ along: new Map([...useReads.getState().along, ...found]) });
      found = new Map();
      return;
    }
    const some = left.slice(0, CHUNK);
    const era = asked;
    busy = true;
    try {
      const answer = await workers.map.call('along', {
        positions: some.map(({ place: { lon, lat } }) => ({ lon, lat })),
        posts,
      });
      const still = era === asked ? some : [];
      still.forEach(({ id, place }, i) => {
        asked.set(id, place);
        found.set(id, answer[i] ?? null);
      });
    } catch {
      // The order of names stands until another district or edit asks again.
      return;
    } finally {
      busy = false;
    }
    schedule();
  }

  /** Everything is asked anew: in another district, or by other mile markers. */
  const again = (): void => {
    asked = new Map();
    found = new Map();
    schedule();
  };
  let stop: (() => void) | undefined;
  useBook.subscribe(({ sites, opened }, before) => {
    if (opened !== before.opened) {
      stop?.();
      posts = opened ? postsOfBook(opened.book()) : [];
      stop = opened?.subscribe(({ keys }) => {
        if (!keys.some(([table]) => table === 'mileMarkers' || table === 'routes')) return;
        posts = postsOfBook(opened.book());
        again();
      });
      again();
    } else if (sites !== before.sites) schedule();
  });
  useDistrict.subscribe(({ district }, before) => {
    if (district === before.district) return;
    useReads.setState({ along: new Map() });
    again();
  });
}
