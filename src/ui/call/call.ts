import type { Book } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import {
  cacheStore,
  districtOf,
  followShell,
  forgetKept,
  keptState,
  keptWeathers,
  readKeptStudy,
  readPack,
  type Weather,
} from '../../io/offline/index.ts';
import type { ByRoad, CallSource } from '../../workers/call/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { readCallAddress, writeCallAddress } from './address.ts';
import type { DevicePosition } from './follow-position.ts';
import { locate } from './locate.ts';
import { holdOf } from './plan/index.ts';
import type { Hit, SiteIndex } from './search/index.ts';
import { sheets } from './sheets.ts';
import { type DistrictHere, districtHere, nameOfHere } from './source.ts';
import { type CallState, createStore, emptyCall, nothingShown, type Place } from './state.ts';
import { KEPT_IS_WHOLE, stayCurrent } from './stay-current.ts';
import { studyOf } from './study-of.ts';
import { callWorker } from './worker.ts';

/** A position without a stated error is taken to lie within this, metres: a phone in a canyon (judgement). */
const ASSUMED_ERROR_M = 30;

/** The other weathers are read once the plan has been on the screen for this long, milliseconds: they must not hold up its sheet. */
const HOLDS_AFTER_MS = 800;

/** Everything a person can do in the call view. */
export type Call = ReturnType<typeof createCall>;

/** The call view's state and actions. What is kept is read first; the network and the worker come after the screen. */
export function createCall() {
  const store = createStore<CallState>(emptyCall);
  const { get, set } = store;
  const disk = cacheStore();
  const worker = callWorker();
  const drawer = sheets();
  let here: Promise<DistrictHere> | null = null;
  const district = (): Promise<DistrictHere> => {
    here ??= districtHere();
    const opening = here;
    // Without a network it may fail; the next question asks again.
    opening.catch(() => {
      if (here === opening) here = null;
    });
    return opening;
  };
  const source = async (): Promise<CallSource> => (await district()).source;
  let index: { readonly of: unknown; readonly index: SiteIndex } | null = null;
  /** Counts questions of a person: only the newest answer is shown, and keeping waits for it. */
  let asked = 0;
  let urgent: Promise<unknown> = Promise.resolve();

  /** Runs a question; its answer counts only while it is the newest. */
  async function question<T>(run: () => Promise<T>, show: (answer: T) => void): Promise<void> {
    const mine = ++asked;
    set({ working: true, problem: null });
    const running = run();
    urgent = running.catch(() => {});
    try {
      const answer = await running;
      if (mine === asked) show(answer);
    } catch (error) {
      if (mine === asked) set({ problem: sentenceOf(error, KEPT_IS_WHOLE), working: false });
    }
  }

  /** The screen of a place; `how` says what becomes of the address. */
  function go(place: Place, how: 'push' | 'follow'): void {
    asked++;
    set({ ...nothingShown, place, query: '', hits: [] });
    if (how === 'push') {
      const hash = addressOf(place);
      if (location.hash !== hash) history.pushState(null, '', hash);
    }
    scrollTo(0, 0);
    if (place.kind === 'around') askAround(place.at, place.errorM);
    else if (place.kind !== 'start') {
      void showStudy();
      drawer.warm();
    }
  }

  function askAround(at: LonLat, errorM: number): void {
    void question(
      async () => worker.ask('around', { at, errorM }, await source()),
      (around) => set({ around, working: false }),
    );
  }

  /** The study of the place under the circumstances: a kept one where it is the same, else worked out. */
  async function showStudy(): Promise<void> {
    const { place, circumstances } = get();
    set({ stale: get().study !== null });
    await question(
      () => studyOf(place, circumstances, { disk, worker, district, pack: () => get().pack }),
      ({ study, atMs }) => {
        const holds = { ...get().holds };
        if (!circumstances.night && !circumstances.wind) holds[circumstances.weather] = holdOf(study);
        set({ study, studyKeptAtMs: atMs, stale: false, working: false, holds });
        setTimeout(() => void fillHolds(place), HOLDS_AFTER_MS);
      },
    );
  }

  /** What the anchors hold in the other weathers, for the switch: from what is kept, never in the way of a question. */
  async function fillHolds(place: Place): Promise<void> {
    if (place.kind !== 'site') return;
    for (const weather of keptWeathers) {
      const kept = get().holds[weather] ? null : await readKeptStudy(disk, place.id, weather).catch(() => null);
      if (get().place !== place) return;
      if (kept) set({ holds: { ...get().holds, [weather]: holdOf(kept.study) } });
    }
  }

  /** The district is known, and has no such site. */
  function lacks(id: string): boolean {
    const { pack } = get();
    return pack !== null && !pack.sites.some((site) => site.id === id);
  }

  function followAddress(): void {
    const address = readCallAddress(location.hash, location.search);
    if (address.kind === 'site') {
      // A book without the site still gets the roads around its position.
      if (address.at && lacks(address.id)) go({ kind: 'around', at: address.at, errorM: ASSUMED_ERROR_M }, 'follow');
      else go({ kind: 'site', id: address.id }, 'follow');
    } else if (address.kind === 'at') {
      go({ kind: 'around', at: address.at, errorM: address.errorM ?? ASSUMED_ERROR_M }, 'follow');
    } else {
      go({ kind: 'start' }, 'follow');
      if (address.kind === 'unread') void type(address.text);
    }
  }

  /** The text of the box: what it may mean is worked out with every letter. */
  async function type(query: string): Promise<void> {
    set({ query });
    const { pack } = get();
    if (!pack || query.trim() === '') return set({ hits: [] });
    const [{ siteIndex, understand }, { readPosition }] = await Promise.all([
      import('./search/index.ts'),
      import('./read-position.ts'),
    ]);
    if (get().query !== query) return;
    if (index?.of !== pack.sites) index = { of: pack.sites, index: siteIndex(pack.sites) };
    const read = (text: string) => readPosition(text, pack.bounds);
    set({ hits: understand(query, { pack, index: index.index, readPosition: read }) });
  }

  let searched = get().pack;
  // What was typed before the district was there is read once it is.
  store.follow(() => {
    const { pack, query } = get();
    if (pack === searched) return;
    searched = pack;
    if (query !== '') void type(query);
  });

  const { keep, look } = stayCurrent({
    ...{ store, worker, disk },
    district: () => {
      here = null;
      return district();
    },
    outlined: () => {
      const { place, study } = get();
      if (place.kind !== 'site' || study) return;
      if (lacks(place.id)) followAddress();
      else void showStudy();
    },
    turn: () => urgent.then(() => undefined),
  });

  return {
    store,
    look,
    /** Takes the newer state over because somebody asked for it; the place on the screen is shown anew once it is kept. */
    async takeNewer(): Promise<void> {
      const { place } = get();
      if (!(await keep())) return;
      set({ newer: false });
      if (get().place !== place) return;
      if (place.kind === 'around') askAround(place.at, place.errorM);
      else if (place.kind !== 'start') void showStudy();
    },
    /** Reads what is kept, shows what the address says, then looks after the app and the network. */
    async start(): Promise<void> {
      const kept = await readPack(disk).catch(() => null);
      const pack = kept && districtOf(kept) === nameOfHere() ? kept : null;
      // Another district was kept: its studies may not stand for this one's.
      if (kept && !pack) await forgetKept(disk, localStorage).catch(() => {});
      set({ pack, loading: false, light: lightNow() });
      // Somebody may have begun to type: an address that names nothing does not take that away.
      if (get().query === '' || readCallAddress(location.hash, location.search).kind !== 'start') followAddress();
      await urgent;
      void followShell((shell) => set({ shell }));
      set({ kept: await keptState(disk, localStorage).catch(() => null) });
      await keep();
    },
    keep,
    followAddress,
    type,
    open: (place: Place): void => go(place, 'push'),
    take(hit: Hit): void {
      if (hit.kind === 'site') go({ kind: 'site', id: hit.site.id }, 'push');
      else if (hit.kind === 'mile') go({ kind: 'around', at: hit.place.position, errorM: hit.place.withinM }, 'push');
      else if (hit.kind === 'position') {
        const { position, withinM } = hit.reading;
        go({ kind: 'around', at: position, errorM: Math.max(withinM, 5) }, 'push');
      }
    },
    setWeather(weather: Weather): void {
      set({ circumstances: { ...get().circumstances, weather } });
      void showStudy();
    },
    toggle(what: 'night' | 'wind'): void {
      const { circumstances } = get();
      set({ circumstances: { ...circumstances, [what]: !circumstances[what] } });
      void showStudy();
    },
    async locate(): Promise<void> {
      set({ locating: true, problem: null });
      try {
        const { at, errorM } = await locate();
        set({ locating: false });
        go({ kind: 'around', at, errorM }, 'push');
      } catch (error) {
        set({ locating: false, problem: sentenceOf(error, KEPT_IS_WHOLE) });
      }
    },
    setLight(light: CallState['light']): void {
      localStorage.setItem(LIGHT, light);
      set({ light });
    },
    /** The way along the roads from the device to a place; null where none is known. */
    byRoad: async ({ at, errorM, headingDeg }: DevicePosition, to: LonLat): Promise<ByRoad | null> =>
      worker.ask('byRoad', { from: at, errorM, headingDeg, to }, await source()),
    /** The book's plain copy; null where there is none. */
    book: async (): Promise<Book | null> => (await source()).book,
    sheets: drawer,
    setOnline: (online: boolean): void => set({ online }),
  };
}

const LIGHT = 'brinkbook/call-light';

/** As chosen, else night: a cab at night must not be lit by a white page. */
const lightNow = (): CallState['light'] => (localStorage.getItem(LIGHT) === 'day' ? 'day' : 'night');

function addressOf(place: Place): string {
  if (place.kind === 'site') return writeCallAddress({ ...place, at: null });
  if (place.kind === 'start') return writeCallAddress(place);
  return writeCallAddress({ kind: 'at', at: place.at, errorM: place.kind === 'around' ? place.errorM : null });
}
