import type { Update } from '../../book/merge/index.ts';
import type { SecondCopy } from './second-copy.ts';

/** How many edits wait for a copy that refuses before they are left to the next opening of the book. */
const PATIENCE = 200;

/** Writes what the disk has kept to the second copy as well; where that fails the book goes on, says so, and tries again. */
export class CopyKeeper {
  private readonly copy: SecondCopy | null;
  private failed = false;
  private waiting: { readonly updates: readonly Update[]; readonly blobs: ReadonlyMap<string, Blob> }[] = [];
  constructor(copy: SecondCopy | null) {
    this.copy = copy;
  }

  /** 'none' where the browser has no place for it, 'behind' where the copy lacks what the disk has. */
  get state(): 'none' | 'behind' | 'current' {
    if (!this.copy) return 'none';
    return this.failed || this.waiting.length > 0 ? 'behind' : 'current';
  }

  /** Keeps updates and photos, after those that the copy refused before. */
  async keep(book: string, updates: readonly Update[], blobs: ReadonlyMap<string, Blob>): Promise<void> {
    if (!this.copy) return;
    this.waiting.push({ updates, blobs });
    if (this.waiting.length > PATIENCE) {
      this.waiting = [];
      this.failed = true;
    }
    try {
      for (let next = this.waiting[0]; next; next = this.waiting[0]) {
        await this.copy.append(book, next.updates, next.blobs);
        this.waiting.shift();
      }
    } catch {
      // They wait; `state` says so.
    }
  }

  /** Does something with the copy; null where there is none or it refuses. */
  async attempt<T>(work: (copy: SecondCopy) => Promise<T>): Promise<T | null> {
    if (!this.copy) return null;
    try {
      return await work(this.copy);
    } catch {
      this.failed = true;
      return null;
    }
  }
}
