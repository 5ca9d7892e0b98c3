import { create } from 'zustand';
import {
  askToLast,
  type FilesToKeep,
  forget,
  type KeepProgress,
  type KeptFiles,
  type KeptSet,
  keep,
  kept,
  keptFiles,
  type StorageUsed,
  storageUsed,
} from '../../io/web/index.ts';
import { UserError } from '../../units/index.ts';

export interface KeptState {
  /** Sets that lie on this device; null before they have been looked up. */
  readonly sets: readonly KeptSet[] | null;
  readonly used: StorageUsed | null;
  /** How far the copying has come; null when nothing is copied. */
  readonly copying: KeepProgress | null;
  /** A set that was removed and can still be brought back. */
  readonly removed: KeptSet | null;
  readonly problem: string | null;
}

/** Files kept on this device as the screens see them; only this file writes it. */
export const useKept = create<KeptState>()(() => ({
  sets: null,
  used: null,
  copying: null,
  removed: null,
  problem: null,
}));

/** A removal can be taken back for so long, milliseconds. */
const UNDO_MS = 10_000;
const set = useKept.setState;
const get = useKept.getState;
let copying: AbortController | null = null;
let removal: ReturnType<typeof setTimeout> | undefined;

/** Looks up what is kept and how much room it takes. */
export async function refreshKept(): Promise<void> {
  try {
    const removed = get().removed?.id;
    set({ sets: (await kept()).filter(({ id }) => id !== removed), used: await storageUsed() });
  } catch (error) {
    set({ sets: [], problem: wordsOf(error) });
  }
}

/** Copies files onto this device and gives them back from there, with the set's id; null where it was stopped or failed, which the state says. */
export async function keepFiles(files: FilesToKeep): Promise<(KeptFiles & { readonly id: string }) | null> {
  const abort = new AbortController();
  copying = abort;
  set({ copying: { done: 0, of: 0 }, problem: null });
  try {
    await askToLast();
    const { id } = await keep(files, (progress) => set({ copying: progress }), abort.signal);
    await refreshKept();
    return { ...(await keptFiles(id)), id };
  } catch (error) {
    set({ problem: abort.signal.aborted ? 'Copying was stopped; nothing of it was kept.' : wordsOf(error) });
    return null;
  } finally {
    copying = null;
    set({ copying: null });
  }
}

/** Deletes a set that turned out not to be of use; nothing to take back. */
export async function dropKept(id: string): Promise<void> {
  await forget(id);
  await refreshKept();
}

/** Stops the copying; what was copied is thrown away. */
export const stopKeeping = (): void => copying?.abort(new DOMException('Stopped.', 'AbortError'));

/** A kept set's files; null where they are gone, which the state says. */
export async function openKept(id: string): Promise<KeptFiles | null> {
  set({ problem: null });
  try {
    return await keptFiles(id);
  } catch (error) {
    set({ problem: wordsOf(error) });
    await refreshKept();
    return null;
  }
}

/** Takes a set off the list; it is deleted a little later, unless that is taken back. */
export async function removeKept(id: string): Promise<void> {
  await deleteRemoved();
  const sets = get().sets ?? [];
  set({ sets: sets.filter((one) => one.id !== id), removed: sets.find((one) => one.id === id) ?? null });
  removal = setTimeout(() => void deleteRemoved(), UNDO_MS);
}

/** Brings the removed set back. */
export async function undoRemoval(): Promise<void> {
  clearTimeout(removal);
  set({ removed: null });
  await refreshKept();
}

async function deleteRemoved(): Promise<void> {
  clearTimeout(removal);
  const { removed } = get();
  if (!removed) return;
  await forget(removed.id);
  set({ removed: null });
  await refreshKept();
}

const wordsOf = (error: unknown): string =>
  error instanceof UserError ? error.message : `The files could not be kept (${(error as Error).message}).`;
