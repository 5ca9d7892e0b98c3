import { create } from 'zustand';
import { type Answers, type StepName, steps } from './steps.ts';

/** A check under way: which step is in hand and what was found so far. Readings and marks are in the book already. */
export interface CheckDraft {
  readonly siteId: string;
  /** Day on which it began, YYYY-MM-DD. */
  readonly begunOn: string;
  readonly step: StepName;
  readonly answers: Answers;
}

const keyOf = (siteId: string): string => `brinkbook-check-${siteId}`;

/** The check on the screen; null before one is open. */
export const useCheck = create<{ readonly draft: CheckDraft | null }>()(() => ({ draft: null }));

/** Goes on with the check of a site, or begins one on `today`. */
export function openCheck(siteId: string, today: string): void {
  useCheck.setState({ draft: remembered(siteId) ?? { siteId, begunOn: today, step: 'edge', answers: {} } });
}

/** Changes the check and keeps it on this device, so that it goes on after a reload. */
export function noteCheck(change: Partial<Pick<CheckDraft, 'step' | 'answers'>>): void {
  const { draft } = useCheck.getState();
  if (!draft) return;
  const next = { ...draft, ...change };
  useCheck.setState({ draft: next });
  try {
    localStorage.setItem(keyOf(next.siteId), JSON.stringify(next));
  } catch {
    // No storage: it holds for this visit; readings and marks are in the book.
  }
}

/** The check is signed off: the next one begins anew. */
export function endCheck(siteId: string): void {
  useCheck.setState({ draft: null });
  try {
    localStorage.removeItem(keyOf(siteId));
  } catch {
    // Nothing was kept.
  }
}

function remembered(siteId: string): CheckDraft | null {
  try {
    const found = JSON.parse(localStorage.getItem(keyOf(siteId)) ?? 'null') as CheckDraft | null;
    const known = found && steps.some(({ name }) => name === found.step) && typeof found.answers === 'object';
    return known ? { ...found, siteId } : null;
  } catch {
    return null;
  }
}
