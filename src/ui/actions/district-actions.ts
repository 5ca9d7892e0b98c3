import { type Book, districtNameOf, type Mark, type MarkRecord } from '../../book/index.ts';
import type { ElevationOptions } from '../../io/index.ts';
import { DEMO_DISTRICT } from '../../io/offline/index.ts';
import type { OpenBook } from '../../io/store/index.ts';
import { keptFiles } from '../../io/web/index.ts';
import type { DistrictFiles, DistrictView } from '../../workers/index.ts';
import { demoBookFile, demoFiles } from '../demo.ts';
import { noteOwnDistrict, ownDistrict } from '../own/own-district.ts';
import { sentenceOf } from '../sentence-of.ts';
import { type OpenDistrict, useBook, useDistrict, usePlace, useReads } from '../state/index.ts';
import { bringDemo, bringMarks } from './bring.ts';
import type { Deps } from './deps.ts';
import type { Navigate } from './navigate.ts';
import type { StudyActions } from './study-actions.ts';

/** Files that a person picked, or the web addresses of rasters, and what they say of the elevation. */
export interface OwnFiles {
  readonly elevation: readonly (File | string)[];
  readonly roads: File | null;
  readonly marks: File | null;
  readonly options: ElevationOptions;
  /** Id of the kept set that the files come from; left out where they lie nowhere on this device. */
  readonly keptId?: string;
}

/** Opens districts: elevation and roads in the workers, sites and marks in the book. */
export function createDistrictActions({ workers, log }: Deps, study: StudyActions, navigate: Navigate) {
  const set = useDistrict.setState;
  let reading: AbortController | null = null;

  async function open(
    files: DistrictFiles,
    bookName: string,
    bring: (book: OpenBook, opened: DistrictView) => Promise<unknown>,
    named: (book: Book) => Omit<OpenDistrict, 'view'>,
  ): Promise<boolean> {
    const before = useDistrict.getState().district;
    reading?.abort();
    const mine = new AbortController();
    reading = mine;
    set({ opening: 'Reading elevation and roads.', problem: null });
    try {
      const view = await workers.study.call('open', files, mine.signal);
      const { book: _, ...ground } = files;
      await workers.map.call('open', ground);
      study.clear();
      useReads.setState({ bySite: new Map() });
      set({ turning: true });
      const book = await log.open(bookName);
      await bring(book, view);
      await tellMarks();
      set({
        district: { ...named(book.book()), view: { ...view, updates: [] } },
        opening: null,
        turning: false,
        mapProblem: null,
      });
      return true;
    } catch (error) {
      const kept = before ? ` ${before.name} stays open.` : '';
      const why = mine.signal.aborted ? 'Reading was stopped.' : sentenceOf(error);
      if (reading === mine) set({ opening: null, turning: false, problem: `${why}${kept}` });
      return false;
    }
  }

  /** The book's marks go to the workers, whose studies and roadsides heed them. */
  async function tellMarks(): Promise<void> {
    const list = [...useBook.getState().marks.values()].map(toMark);
    await Promise.all([workers.study.call('marks', list), workers.map.call('marks', list)]);
  }
  useBook.subscribe(({ marks }, before) => {
    if (marks === before.marks || !useDistrict.getState().district) return;
    void tellMarks();
    useReads.setState({ bySite: new Map() });
    study.again();
  });

  /** Opens the demo district and goes where the address bar says. */
  async function openDemo(): Promise<boolean> {
    // At the start the address may say how the map is looked at; later that is how another district was.
    const atStart = useDistrict.getState().district === null;
    const files = { ...demoFiles(), book: demoBookFile() };
    const opened = await open(files, DEMO_DISTRICT, bringDemo, (book) => ({
      name: districtNameOf(book) || 'Demo district',
      invented: true,
    }));
    if (opened) study.visit(!atStart || usePlace.getState().view === null);
    return opened;
  }

  return {
    /** Opens the demo in place of an own district; from then on it is what opens by itself, here and in the call view. */
    async openDemo(): Promise<void> {
      if (await openDemo()) noteOwnDistrict(localStorage, null);
    },
    /** Opens what was opened last, where its files are kept on this device, else the demo; goes where the address bar says. */
    async openLast(): Promise<void> {
      const own = ownDistrict(localStorage);
      if (!own) return void (await openDemo());
      const name = own.name;
      let why: string | null = null;
      try {
        const { elevation, ...files } = await keptFiles(own.keptId);
        const origins = { ...files, elevation: [...elevation, ...own.addresses] };
        if (await open(origins, own.book, bringMarks, () => ({ name, invented: false }))) {
          return study.visit(usePlace.getState().view === null);
        }
        why = useDistrict.getState().problem;
      } catch (error) {
        // They are gone for good: what was noted of them leads nowhere.
        noteOwnDistrict(localStorage, null);
        why = sentenceOf(error);
      }
      await openDemo();
      if (useDistrict.getState().problem === null) {
        set({ problem: `${name} could not be opened, the demo is shown in its place. ${why ?? ''}`.trim() });
      }
    },
    /** Opens files that a person picked in place of what is on the desk; false where that failed, which the state says. */
    async openOwn({ elevation, roads, marks, options, keptId }: OwnFiles): Promise<boolean> {
      const first = elevation[0];
      const name = typeof first === 'string' ? first.split('/').at(-1)! : (first?.name ?? 'Own files');
      const book = `own ${name}`;
      const opened = await open({ elevation, roads, marks, options }, book, bringMarks, () => ({
        name,
        invented: false,
      }));
      if (!opened) return false;
      if (keptId !== undefined) {
        const addresses = elevation.filter((origin) => typeof origin === 'string');
        noteOwnDistrict(localStorage, { keptId, addresses, name, book });
      }
      navigate.go({ screen: 'survey', subject: null, view: null });
      return true;
    },
    /** Files were dropped: the form for own files takes them. */
    drop(dropped: readonly File[]): void {
      set({ dropped });
      navigate.go({ screen: 'open' });
    },
    /** The form has taken the dropped files. */
    takeDropped: (): void => set({ dropped: null }),
    /** Gives up reading what is being opened; what was open stays. */
    stopOpening: (): void => reading?.abort(),
    mapFailed: (mapProblem: string): void => set({ mapProblem }),
  };
}

const toMark = ({ id, kind, name, geometry, trunkDiameterM, heightM }: MarkRecord): Mark => ({
  id,
  kind,
  name,
  geometry,
  trunkDiameterM,
  heightM,
});
