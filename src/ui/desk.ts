import { angleRules, defaultAngleRule } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import type { ElevationOptions } from '../io/index.ts';
import { type UnitSystem, UserError } from '../units/index.ts';
import {
  type DistrictFiles,
  type DistrictView,
  latest,
  type StudyAsk,
  type StudyFunctions,
  type WorkerClient,
} from '../workers/index.ts';
import { type Place, readAddress, writeAddress } from './address.ts';
import { demoFiles } from './demo.ts';
import { type LightChoice, type OpenDistrict, useDesk } from './desk-state.ts';

/** Files that a person picked, or the web addresses of rasters, and what they say of the elevation. */
export interface OwnFiles {
  readonly elevation: readonly (File | string)[];
  readonly roads: File | null;
  readonly marks: File | null;
  readonly options: ElevationOptions;
}

export interface DeskWorkers {
  readonly study: WorkerClient<StudyFunctions<ImageBitmap>>;
  readonly map: WorkerClient<StudyFunctions<ImageBitmap>>;
}

/** After this long without an answer the shown study says that it is an old one, milliseconds. */
const STALE_AFTER_MS = 350;

/** Everything a person can do at the desk. */
export type Desk = ReturnType<typeof createDesk>;

/** The desk's actions: they ask the workers, keep the state and the address bar in step. */
export function createDesk({ study, map }: DeskWorkers) {
  const set = useDesk.setState;
  const get = useDesk.getState;
  let reading: AbortController | null = null;
  let staleTimer: ReturnType<typeof setTimeout> | undefined;

  const settle = (): void => {
    clearTimeout(staleTimer);
    staleTimer = undefined;
  };
  const asks = latest<{ ask: StudyAsk; placed: boolean }, Awaited<ReturnType<StudyFunctions<ImageBitmap>['study']>>>(
    ({ ask }) => study.call('study', ask),
    (answer, { ask, placed }) => {
      const newest = samePlace(ask.at, get().point);
      if (newest) settle();
      set({ answer, problem: null, ...(newest ? { stale: false, working: false } : {}) });
      if (placed && newest) showAddress({ screen: 'study', at: ask.at, side: answer.study.site.side }, 'replace');
    },
    (error, { ask }) => {
      if (!samePlace(ask.at, get().point)) return;
      settle();
      set({ answer: null, problem: sentenceOf(error), stale: false, working: false });
    },
  );

  function ask(exact: LonLat, side: StudyAsk['side'], placed: boolean): void {
    const at = toCentimetres(exact);
    const { ruleName, units, district } = get();
    set({ point: at, working: true });
    if (!district) return;
    staleTimer ??= setTimeout(() => set({ stale: get().answer !== null }), STALE_AFTER_MS);
    const rule = angleRules.find(({ name }) => name === ruleName) ?? defaultAngleRule;
    asks.ask({ ask: { at, side, rule, units }, placed });
  }

  /** A place that came from a list or the address bar. */
  function visit(at: LonLat, side: StudyAsk['side']): void {
    ask(at, side, true);
    set({ look: get().look + 1 });
  }

  /** The same place again, under another rule or in another unit. */
  function again(): void {
    const { place } = get();
    if (place.screen === 'study') ask(place.at, place.side, true);
  }

  function clear(): void {
    asks.drop();
    settle();
    set({ point: null, answer: null, problem: null, stale: false, working: false });
  }

  function showAddress(place: Place, how: 'push' | 'replace'): void {
    const hash = writeAddress(place);
    set({ place });
    if (location.hash === hash) return;
    if (how === 'push') history.pushState(null, '', hash);
    else history.replaceState(null, '', hash);
  }

  function followAddress(): void {
    const place = readAddress(location.hash);
    set({ place });
    if (place.screen === 'study') visit(place.at, place.side);
    else if (place.screen === 'start') clear();
  }

  async function open(
    files: DistrictFiles,
    named: (view: DistrictView) => Omit<OpenDistrict, 'view'>,
  ): Promise<boolean> {
    const before = get().district;
    reading?.abort();
    const mine = new AbortController();
    reading = mine;
    set({ opening: 'Reading elevation and roads.', openProblem: null });
    try {
      const view = await study.call('open', files, mine.signal);
      await map.call('open', { ...files, sites: null });
      clear();
      set({ district: { ...named(view), view }, opening: null, mapProblem: null });
      return true;
    } catch (error) {
      const kept = before ? ` ${before.name} stays open.` : '';
      const why = mine.signal.aborted ? 'Reading was stopped.' : sentenceOf(error);
      if (reading === mine) set({ opening: null, openProblem: `${why}${kept}` });
      return false;
    }
  }

  return {
    /** Opens the demo district and goes where the address bar says. */
    async openDemo(): Promise<void> {
      const opened = await open(demoFiles(), ({ list }) => ({
        name: list?.district.replace(/ \(invented\)$/, '') ?? 'Demo district',
        invented: true,
      }));
      if (opened) followAddress();
    },
    /** Opens files that a person picked in place of what is on the desk; false where that failed, which the state says. */
    async openOwn({ elevation, roads, marks, options }: OwnFiles): Promise<boolean> {
      const first = elevation[0];
      const name = typeof first === 'string' ? first.split('/').at(-1)! : (first?.name ?? 'Own files');
      const opened = await open({ elevation, roads, marks, sites: null, options }, () => ({ name, invented: false }));
      if (opened) showAddress({ screen: 'start' }, 'push');
      return opened;
    },
    /** Files were dropped: the form for own files takes them. */
    drop(dropped: readonly File[]): void {
      set({ dropped });
      showAddress({ screen: 'open' }, 'push');
    },
    /** The form has taken the dropped files. */
    takeDropped: (): void => set({ dropped: null }),
    /** Gives up reading what is being opened; what was open stays. */
    stopOpening: (): void => reading?.abort(),
    /** The point moves under a finger or a key: the study follows, the address waits. */
    move: (at: LonLat): void => ask(at, 'of the point', false),
    /** A tap, a released point or Enter. */
    placeAt(at: LonLat): void {
      showAddress({ screen: 'study', at: toCentimetres(at), side: null }, 'push');
      ask(at, 'of the point', true);
    },
    /** A site of the list. */
    goToSite(id: string): void {
      const site = get().district?.view.list?.sites.find((one) => one.id === id);
      if (!site) return;
      const at = { lon: site.lon, lat: site.lat };
      showAddress({ screen: 'study', at, side: site.side }, 'push');
      visit(at, site.side);
    },
    goTo(place: Place): void {
      showAddress(place, 'push');
      if (place.screen === 'start') clear();
    },
    followAddress,
    setUnits(units: UnitSystem): void {
      set({ units });
      again();
    },
    setRule(ruleName: string): void {
      set({ ruleName });
      again();
    },
    setLight: (light: LightChoice): void => set({ light }),
    mapFailed: (mapProblem: string): void => set({ mapProblem }),
  };
}

/** A position to the digits that the address bar carries, so that a sent address gives the same study. */
const toCentimetres = ({ lon, lat }: LonLat): LonLat => ({ lon: Number(lon.toFixed(7)), lat: Number(lat.toFixed(7)) });

const samePlace = (a: LonLat, b: LonLat | null): boolean => b !== null && a.lon === b.lon && a.lat === b.lat;

/** A person's sentence for what went wrong; a programmer's mistake is told as one. */
export function sentenceOf(error: unknown): string {
  if (error instanceof UserError) return error.message;
  const what = error instanceof Error ? error.message : String(error);
  return `Something in the program failed (${what}). Nothing was lost; move the point or reload the page.`;
}
