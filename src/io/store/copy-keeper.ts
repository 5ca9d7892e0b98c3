import type { Update } from '../../book/merge/index.ts';
import type { SecondCopy } from './second-copy.ts';

/** Writes what the disk has kept to the second copy as well; where that fails the book goes on and says so. */
export class CopyKeeper {
  private readonly copy: SecondCopy | null;
  private failed = false;
  constructor(copy: SecondCopy | null) {
    this.copy = copy;
  }

  /** 'none' where the browser has no place for it, 'behind' where the copy lacks what the disk has until the book is opened anew. */
  get state(): 'none' | 'behind' | 'current' {
    if (!this.copy) return 'none';
    return this.failed ? 'behind' : 'current';
  }

  async keep(book: string, updates: readonly Update[], blobs: ReadonlyMap<string, Blob>): Promise<void> {
    await this.attempt((copy) => copy.append(book, updates, blobs));
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
