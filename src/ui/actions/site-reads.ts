import type { Study } from '../../study/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { type SiteRead, useBook, useDistrict, useGiven, useReads, useStudy } from '../state/index.ts';
import type { Deps } from './deps.ts';
import { askOf, questionOf } from './question.ts';

/** The worker is left alone for this long after a hand's question, milliseconds. */
const QUIET_MS = 700;
/** Rows must stay in view this long before they are read: those that a scroll or a search runs past are nobody's wish, milliseconds. */
const REST_MS = 400;

/** Reads sites of the list one after another while nobody asks for a study. */
export interface SiteReads {
  /** Sites in view, in the order in which they should be read. */
  want(ids: readonly string[]): void;
}

export function createSiteReads({ workers }: Pick<Deps, 'workers'>): SiteReads {
  let wanted: readonly string[] = [];
  let busy = false;
  let askedAt = 0;
  let wantedAt = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let era = 0;

  useStudy.subscribe(({ working }) => {
    if (working) askedAt = performance.now();
  });
  useGiven.subscribe(({ ruleName, conditions }, before) => {
    if (ruleName !== before.ruleName || conditions !== before.conditions) forget();
  });
  useReads.subscribe(({ bySite }, before) => {
    if (bySite.size < before.bySite.size) era++;
    schedule();
  });
  useBook.subscribe(({ sites }, before) => {
    const moved = [...useReads.getState().bySite.keys()].filter((id) => sites.get(id) !== before.sites.get(id));
    if (sites === before.sites || moved.length === 0) return;
    const bySite = new Map(useReads.getState().bySite);
    for (const id of moved) bySite.delete(id);
    useReads.setState({ bySite });
  });

  const forget = (): void => useReads.setState({ bySite: new Map() });

  function schedule(): void {
    clearTimeout(timer);
    if (busy) return;
    const { bySite } = useReads.getState();
    const next = wanted.find((id) => !bySite.has(id));
    if (next === undefined || !useDistrict.getState().district) return;
    const now = performance.now();
    if (useStudy.getState().working || now - askedAt < QUIET_MS) timer = setTimeout(schedule, QUIET_MS);
    else if (now - wantedAt < REST_MS) timer = setTimeout(schedule, REST_MS);
    else void read(next);
  }

  async function read(id: string): Promise<void> {
    const question = questionOf({ kind: 'site', id });
    if (!question) return;
    busy = true;
    const mine = era;
    let result: SiteRead | { none: string };
    try {
      result = readOf((await workers.study.call('study', askOf(question))).study);
    } catch (error) {
      result = { none: sentenceOf(error) };
    }
    busy = false;
    if (mine === era) useReads.setState(({ bySite }) => ({ bySite: new Map(bySite).set(id, result) }));
    else schedule();
  }

  return {
    want(ids) {
      if (ids.length !== wanted.length || ids.some((id, i) => id !== wanted[i])) wantedAt = performance.now();
      wanted = ids;
      schedule();
    },
  };
}

/** What a row of the list shows of a study. */
export function readOf({ angle, descent, layouts, terrain, sentence }: Study): SiteRead | { none: string } {
  if (!angle || !descent) return { none: sentence };
  const resets = (kind: 'turned' | 'straight'): number | null =>
    layouts.find((layout) => layout.kind === kind)?.resets ?? null;
  return {
    className: angle.class,
    planAs: angle.planAs,
    governingDeg: angle.governingDeg,
    rangeDeg: angle.rangeDeg,
    ropeLineM: descent.ropeLineM,
    resets: { turned: resets('turned'), straight: resets('straight') },
    water: descent.end.why === 'water',
    screeningOnly: terrain.screeningOnly,
  };
}
