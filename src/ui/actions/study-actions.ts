import { type DraftAnswer, latest, type StudyAnswer } from '../../workers/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { emptyStudy, shownStudy, useDistrict, usePlace, useStudy } from '../state/index.ts';
import type { Deps } from './deps.ts';
import { askOf, type Question, questionOf } from './question.ts';

interface Asked {
  readonly n: number;
  readonly question: Question;
  /** The point moves under a hand: a draft is enough, and the whole follows when it rests. */
  readonly draft: boolean;
  readonly then: ((answer: StudyAnswer) => void) | null;
  /** Gives up a whole study that nobody waits for any more: the point moves on. */
  readonly abort: AbortController;
}

/** After this long without an answer the shown study says that it is an old one, milliseconds. */
const STALE_AFTER_MS = 350;
/** A point that lay still for so long rests: the whole of its study is worked out, milliseconds after its draft. */
const REST_MS = 120;

/** Asks for studies; the newest question wins. */
export interface StudyActions {
  /** Asks; `then` runs with the answer unless a newer question came first. */
  ask(question: Question, then?: (answer: StudyAnswer) => void): void;
  /** Asks for what moves under a hand: drafts, and the whole study once it rests. */
  follow(question: Question): void;
  /** The subject of the place, as the book has it; `look` brings it into view. */
  visit(look: boolean): void;
  /** The same subject again: another rule, other conditions, other records. */
  again(): void;
  clear(): void;
}

export function createStudyActions({ workers }: Pick<Deps, 'workers'>): StudyActions {
  const set = useStudy.setState;
  const get = useStudy.getState;
  let staleTimer: ReturnType<typeof setTimeout> | undefined;
  let restTimer: ReturnType<typeof setTimeout> | undefined;
  let newest = 0;
  /** The whole study of a point that rested, on its way. */
  let resting: Asked | null = null;

  const settle = (): void => {
    clearTimeout(staleTimer);
    staleTimer = undefined;
  };
  const wait = (): void => {
    staleTimer ??= setTimeout(() => set({ stale: shownStudy(get()) !== null }), STALE_AFTER_MS);
  };

  const asks = latest<Asked, StudyAnswer | DraftAnswer>(
    ({ question, draft, abort }) =>
      workers.study.call(draft ? 'draft' : 'study', askOf(question), draft ? undefined : abort.signal),
    (answer, asked) => {
      const last = asked.n === newest;
      settle();
      if (!last) wait();
      if ('draft' in answer) {
        set({ draft: answer, problem: null, stale: false });
        if (last) restTimer = setTimeout(() => rest(asked), REST_MS);
        return;
      }
      set({ answer, draft: null, problem: null, stale: false, ...(last ? { working: false } : {}) });
      if (last) asked.then?.(answer);
    },
    (error, { n }) => {
      if (n !== newest) return;
      settle();
      set({ answer: null, draft: null, problem: sentenceOf(error), stale: false, working: false });
    },
  );

  function rest(drafted: Asked): void {
    wait();
    resting = { ...drafted, draft: false };
    asks.ask(resting);
  }

  /** Nobody waits any more for the whole of a point that moved on. */
  function moveOn(): void {
    clearTimeout(restTimer);
    resting?.abort.abort();
    resting = null;
  }

  function ask(question: Question, then: Asked['then'], draft = false): void {
    set({ point: question.at, patient: question.patient, pins: question.pins, working: true });
    newest++;
    moveOn();
    if (!useDistrict.getState().district) return;
    wait();
    asks.ask({ n: newest, question, draft, then, abort: new AbortController() });
  }

  function clear(): void {
    newest++;
    moveOn();
    asks.drop();
    settle();
    set({ ...emptyStudy, look: get().look });
  }

  function visit(look: boolean): void {
    const { subject } = usePlace.getState();
    const question = subject && questionOf(subject);
    if (!subject) clear();
    else if (question) {
      ask(question, null);
      if (look) set({ look: get().look + 1 });
    } else if (useDistrict.getState().district) {
      clear();
      set({ problem: 'This book has no such site; it may have been deleted. Pick one of the list, or undo.' });
    }
  }

  return {
    ask: (question, then) => ask(question, then ?? null),
    follow: (question) => ask(question, null, true),
    visit,
    again: () => visit(false),
    clear,
  };
}
