import { heads, type MergeState, snapshotOf } from '../../book/merge/index.ts';
import type { BookDisk } from './book-disk.ts';
import type { CopyKeeper } from './copy-keeper.ts';

/** Edits have settled after this long without one, milliseconds. */
const SETTLED_MS = 2000;

/** Writes the plain snapshot for readers once edits settle, and when a page ends. */
export class SnapshotWriter {
  private readonly disk: BookDisk;
  private readonly state: () => MergeState;
  private readonly keeper: CopyKeeper;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stale = false;
  constructor(disk: BookDisk, keeper: CopyKeeper, state: () => MergeState) {
    this.disk = disk;
    this.keeper = keeper;
    this.state = state;
  }

  soon(): void {
    this.stale = true;
    clearTimeout(this.timer);
    // A snapshot is derived and made anew: where the disk refuses, readers see that theirs is behind.
    this.timer = setTimeout(() => void this.writeNow().catch(() => undefined), SETTLED_MS);
  }

  async writeNow(): Promise<void> {
    if (!this.stale) return;
    clearTimeout(this.timer);
    const state = this.state();
    const snapshot = { text: JSON.stringify(snapshotOf(state)), heads: heads(state.vector) };
    this.stale = false;
    const written = await this.disk.transact({}, ({ meta }) => {
      const current = meta !== null && JSON.stringify(heads(meta.vector)) === JSON.stringify(snapshot.heads);
      // Another tab is ahead: its own snapshot follows.
      return { write: current ? { snapshot } : {}, answer: current };
    });
    if (written) await this.keeper.attempt((copy) => copy.keepSnapshot(snapshot.text));
  }

  stop(): void {
    clearTimeout(this.timer);
  }
}
