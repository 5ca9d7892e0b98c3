import { latest, type StudyAnswer, type StudyAsk } from '../../workers/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { emptyStudy, useDistrict, usePlace, useStudy } from '../state/index.ts';
import type { Deps } from './deps.ts';
import { askOf, type Question, questionOf } from './question.ts';

interface Asked {
  readonly n: number;
  readonly ask: StudyAsk;
  /** The point moves under a hand: what the ground says is shown before the layouts are found. */
  readonly follows: boolean;
  /** When it was asked, `performance.now`. */
  readonly at: number;
  readonly then: ((answer: StudyAnswer) => void) | null;
}

/** After this long without an answer the shown study says that it is an old one, milliseconds. */
const STALE_AFTER_MS = 350;
/** A study that is whole by then needs no part of it shown ahead, milliseconds after the question. */
const AHEAD_AFTER_MS = 60;

/** Asks for studies; the newest question wins. */
export interface StudyActions {
  /** Asks; `then` runs with the answer unless a newer question came first. */
  ask(question: Question, then?: (answer: StudyAnswer) => void): void;
  /** Asks for a point that moves under a hand. */
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
  let newest = 0;

  const settle = (): void => {
    clearTimeout(staleTimer);
    staleTimer = undefined;
  };
  let running: Asked | null = null;

  /** Shows what the ground says as soon as it is known and the eye has waited, unless the whole came first. */
  async function lookAhead(asked: Asked): Promise<void> {
    const ahead = await workers.study.call('ahead', asked.ask).catch(() => null);
    const left = asked.at + AHEAD_AFTER_MS - performance.now();
    if (left > 0) await new Promise((resolve) => setTimeout(resolve, left));
    if (ahead && running === asked) set({ ahead, problem: null });
  }

  const asks = latest<Asked, StudyAnswer>(
    (asked) => {
      running = asked;
      if (asked.follows) void lookAhead(asked);
      return workers.study.call('study', asked.ask);
    },
    (answer, { n, then }) => {
      running = null;
      const last = n === newest;
      if (last) settle();
      set({ answer, ahead: null, problem: null, ...(last ? { stale: false, working: false } : {}) });
      if (last) then?.(answer);
    },
    (error, { n }) => {
      running = null;
      if (n !== newest) return;
      settle();
      set({ answer: null, ahead: null, problem: sentenceOf(error), stale: false, working: false });
    },
  );

  function ask(question: Question, then: Asked['then'], follows = false): void {
    set({ point: question.at, patient: question.patient, pins: question.pins, working: true });
    newest++;
    if (!useDistrict.getState().district) return;
    staleTimer ??= setTimeout(() => set({ stale: get().answer !== null }), STALE_AFTER_MS);
    asks.ask({ n: newest, ask: askOf(question), then, follows, at: performance.now() });
  }

  function clear(): void {
    newest++;
    running = null;
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
