import type { Update } from '../../book/merge/index.ts';

/** Updates of one actor from a number to a number, both held. */
export type Held = readonly [actor: string, from: number, to: number];

/** What a second copy has of a book, told from its names alone: updates, and photos by their hash. */
export interface CopyHolds {
  readonly book: string;
  readonly held: readonly Held[];
  readonly photos: readonly string[];
}

/**
 * A second place on the device for the updates and photos of a book, kept beside the disk: a browser that finds its database damaged
 * empties it without a word. Everything in it is written once. Its methods may reject; the book goes on without it and says so.
 */
export interface SecondCopy {
  /** What is there of a book; null where there is nothing. */
  look(book: string): Promise<CopyHolds | null>;
  /** The book written last of all but `book`; null where there is no other. */
  latestBeside(book: string): Promise<string | null>;
  /** Keeps updates and photos; resolves once they are written. */
  append(book: string, updates: readonly Update[], blobs: ReadonlyMap<string, Blob>): Promise<void>;
  /** Everything of a book as it can be read, unchecked; what cannot be read is left out. */
  read(book: string): Promise<{ readonly updates: readonly unknown[]; readonly blobs: ReadonlyMap<string, Blob> }>;
  /** Keeps the plain book's text for readers. */
  keepSnapshot(text: string): Promise<void>;
  /** Puts many small pieces together, where nobody else is at it. */
  tidy(book: string): Promise<void>;
}

/** Runs of updates by actor without a gap, for pieces that say by their name what they hold. */
export function runsOf(updates: readonly Update[]): { readonly held: Held; readonly updates: readonly Update[] }[] {
  const sorted = [...updates].sort((a, b) => (a.actor < b.actor ? -1 : a.actor > b.actor ? 1 : a.n - b.n));
  const runs: { held: Held; updates: Update[] }[] = [];
  for (const update of sorted) {
    const last = runs.at(-1);
    if (last && last.held[0] === update.actor && last.held[2] + 1 === update.n) {
      last.updates.push(update);
      last.held = [update.actor, last.held[1], update.n];
    } else if (!last || last.held[0] !== update.actor || last.held[2] < update.n) {
      runs.push({ held: [update.actor, update.n, update.n], updates: [update] });
    }
  }
  return runs;
}
