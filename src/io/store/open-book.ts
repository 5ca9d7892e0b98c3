import { type Book, isTable, type RecordOf, type TableName } from '../../book/index.ts';
import {
  type Change,
  composeDraft,
  type Draft,
  type HistoryEntry,
  historyOf,
  type KeptField,
  type RecordState,
  type Update,
} from '../../book/merge/index.ts';
import { UserError } from '../../units/index.ts';
import type { BookDisk, Meta, RecordKey, TabNews, World } from './book-disk.ts';
import { type Committed, commitDrafts, committedIds } from './commit-drafts.ts';
import { CopyKeeper } from './copy-keeper.ts';
import { type CopyState, copyState } from './copy-state.ts';
import type { BookChange, Editor, Unsaved } from './edit-types.ts';
import type { Loaded } from './load-book.ts';
import { loadWithCopy } from './load-with-copy.ts';
import { asNewActor } from './new-meta.ts';
import { type Received, receiveUpdates } from './receive-updates.ts';
import { Serial } from './serial.ts';
import { ShownState } from './shown-state.ts';
import { SnapshotWriter } from './snapshot-writer.ts';
import { turnDrafts } from './turn-drafts.ts';
import { UndoRecord } from './undo-record.ts';
import { unheard } from './unheard.ts';

/** Opens the book of a disk, making a new one where there is none. */
export async function openBook(disk: BookDisk, world: World, editor: Editor): Promise<OpenBook> {
  const keeper = new CopyKeeper(world.copy);
  const { loaded, recovered } = await loadWithCopy(disk, world, keeper);
  const book = new OpenBook(disk, world, editor, loaded, keeper, recovered);
  // What another tab wrote after the load and before this one listened.
  await book.refresh();
  return book;
}

/**
 * The living book of one tab. What it shows is what is durable: an edit changes it once the disk has it. Edits run one after the
 * other, each on what the screen showed when it was asked for.
 */
export class OpenBook {
  editor: Editor;
  /** Updates that the disk had lost and the second copy gave back when the book was opened: told on the screen. */
  readonly recovered: number;
  private readonly disk: BookDisk;
  private readonly world: World;
  private readonly shown: ShownState;
  private readonly queue = new Serial();
  private readonly listeners = new Set<(change: BookChange) => void>();
  private readonly undoRecord: UndoRecord;
  private readonly writer: SnapshotWriter;
  private readonly stopHearing: (() => void) | undefined;
  private readonly keeper: CopyKeeper;
  private kept: Unsaved[] = [];

  constructor(disk: BookDisk, world: World, editor: Editor, loaded: Loaded, keeper: CopyKeeper, recovered: number) {
    this.disk = disk;
    this.world = world;
    this.editor = editor;
    this.keeper = keeper;
    this.recovered = recovered;
    this.shown = new ShownState(loaded.meta, loaded.state);
    this.undoRecord = new UndoRecord(disk);
    this.writer = new SnapshotWriter(disk, keeper, () => this.shown.state);
    if (recovered > 0) this.writer.soon();
    this.stopHearing = world.channel?.hear((news) => void this.inTurn(() => this.hear(news)));
  }

  /** The whole book, plain; the same object until something changes. */
  book(): Book {
    return this.shown.book();
  }
  /** One record, plain; null where there is none, or not all of it yet. */
  record<T extends TableName>(table: T, id: string): RecordOf<T> | null {
    return this.shown.record(table, id);
  }

  /** Edits that are under way, and those that the device could not keep. */
  get saving(): number {
    return this.queue.waiting;
  }
  get unsaved(): readonly Unsaved[] {
    return this.kept;
  }
  /** How the second copy on this device stands. */
  get secondCopy(): CopyKeeper['state'] {
    return this.keeper.state;
  }
  /** Updates that wait for a newer program. */
  get newer(): number {
    return this.shown.meta.newer;
  }
  /** Name of the book, and of this copy of it as a writer. */
  get names(): { readonly book: string; readonly actor: string } {
    return this.shown.meta;
  }

  /**
   * Changes records; resolves with the update once it is durable, with null where nothing was to change. Rejects with a `UserError`
   * where a value cannot be used, or where the device could not keep it: then it stands in `unsaved`. `blobs`: photos by hash.
   */
  edit(changes: readonly Change[], label: string, blobs: Unsaved['blobs'] = new Map()): Promise<Update | null> {
    const seen = this.shown.sight();
    const author = { ...this.editor, label };
    return this.inTurn(async () => {
      const draft = composeDraft(this.shown.state, changes, author, seen);
      return draft && ((await this.keep([draft], blobs))[0] ?? null);
    });
  }

  /** Takes back this device's last edit; the fields that somebody has changed since stay. Null where nothing is left. */
  undo(): Promise<readonly KeptField[] | null> {
    return this.turn('undoes');
  }
  redo(): Promise<readonly KeptField[] | null> {
    return this.turn('redoes');
  }
  /** What undo and redo would take back or bring back, in words; null where nothing. */
  canTurn(): Promise<{ readonly undo: string | null; readonly redo: string | null }> {
    return this.inTurn(() => this.undoRecord.labels(this.shown.meta));
  }

  /** Takes updates of other devices in, all or none; `from` names the file or the peer. */
  receive(updates: readonly unknown[], from: string, blobs?: Unsaved['blobs']): Promise<Received> {
    return this.inTurn(async () => {
      const committed = await receiveUpdates(this.disk, this.world, updates, from, blobs);
      await this.keeper.keep(this.names.book, committed.updates, blobs ?? new Map());
      this.undoRecord.forget();
      this.take(committed, true);
      return committed.received;
    });
  }

  /** All updates held, or those that a peer lacks who holds `have`: what a file or a server is given. */
  async updates(have: readonly (readonly [actor: string, n: number])[] = []): Promise<Update[]> {
    const known = new Map(have);
    return (await this.disk.readLogFrom()).filter(({ actor, n }) => n > (known.get(actor) ?? 0));
  }
  /** How many updates of each actor are held without a gap: what a peer is told. */
  heads(): [actor: string, n: number][] {
    return this.shown.heads();
  }
  /** Who set what of a record, oldest first. */
  async history(table: TableName, id: string): Promise<HistoryEntry[]> {
    return historyOf(table, id, await this.disk.readLogFrom());
  }

  photo(hash: string): Promise<Blob | null> {
    return this.disk.readBlob(hash);
  }
  photoHashes(): Promise<string[]> {
    return this.disk.blobHashes();
  }

  /** Tries again to keep what could not be kept, in its order; rejects at the first that still cannot. */
  async saveAgain(): Promise<void> {
    const again = this.kept;
    this.kept = [];
    for (const [i, { draft, blobs }] of again.entries()) {
      try {
        await this.inTurn(() => this.keep([draft], blobs));
      } catch (error) {
        this.kept.push(...again.slice(i + 1));
        throw error;
      }
    }
  }
  /** Gives up what could not be kept. */
  dropUnsaved(): void {
    this.kept = [];
    this.changed([], true);
  }

  /** Goes on as a new writer: after this copy was restored or its profile copied. */
  asNewDevice(): Promise<void> {
    return this.changeMeta((meta) => asNewActor(meta, this.world));
  }
  /** Notes that a whole copy of the book has left the device; `held` is what it held (`heads` when it was made). */
  noteCopyLeft(held: readonly (readonly [string, number])[] = this.heads()): Promise<void> {
    return this.changeMeta((meta) => ({ ...meta, copyLeft: { atMs: this.world.now(), heads: held } }));
  }
  /** Whether a copy is off the device, for the reminder. */
  copyState(): CopyState {
    const { copyLeft } = this.shown.meta;
    return copyState({ vector: this.shown.state.vector, copyLeft }, this.world.now());
  }

  /** Writes the plain snapshot for readers now, as at the end of a page. */
  settle(): Promise<void> {
    return this.inTurn(() => this.writer.writeNow());
  }

  /** Reads anew what other tabs may have changed unheard, as after a sleep. */
  refresh(): Promise<void> {
    return this.inTurn(async () => {
      const { meta } = await this.disk.readRecords([]);
      if (meta && unheard(meta.vector, this.shown.state.vector).length === 0) return;
      const all = await this.disk.readAll();
      if (!all.meta) throw new UserError('book-gone', 'The book is no longer on this device; load the page again.');
      const ids = unheard(all.meta.vector, this.shown.state.vector);
      this.foreign(all.meta, all.records, ids);
    });
  }

  /** Calls back after every change, by whichever tab; returns what ends it. */
  subscribe(listener: (change: BookChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Ends the work of this tab once all that was asked for is done. */
  async close(): Promise<void> {
    this.stopHearing?.();
    this.writer.stop();
    await this.inTurn(async () => undefined);
    this.disk.close();
  }

  private inTurn<T>(task: () => Promise<T>): Promise<T> {
    return this.queue.run(async () => {
      try {
        return await task();
      } finally {
        if (this.queue.waiting === 1) this.shown.forgetArrived();
      }
    });
  }

  private turn(as: 'undoes' | 'redoes'): Promise<readonly KeptField[] | null> {
    const { editor } = this;
    return this.inTurn(async () => {
      const ids = await this.undoRecord.next(this.shown.meta, as);
      if (!ids) return null;
      const { drafts, kept } = await turnDrafts(this.disk, this.shown.state, ids, as, editor);
      await this.keep(drafts, new Map());
      return kept;
    });
  }

  private async keep(drafts: readonly Draft[], blobs: Unsaved['blobs']): Promise<readonly Update[]> {
    let committed: Committed;
    try {
      committed = await commitDrafts(this.disk, this.world, drafts, blobs);
    } catch (cause) {
      const sentence = 'This change is not saved: the device refused it; try again.';
      const error = cause instanceof UserError ? cause : new UserError('not-saved', sentence, { cause });
      for (const draft of drafts) this.kept.push({ draft, blobs, error });
      this.changed([], true);
      throw error;
    }
    await this.keeper.keep(this.names.book, committed.updates, blobs);
    this.undoRecord.note(committed.updates);
    this.take(committed, false);
    return committed.updates;
  }

  /** Takes what this tab committed onto the screen and tells the other tabs. */
  private take(committed: Committed, foreign: boolean): void {
    const ids = committedIds(committed);
    const keys = committed.records.map(({ table, id }): RecordKey => [table, id]);
    this.shown.adopt(committed.meta, committed.records, ids, foreign);
    this.world.channel?.tell({ ids, keys });
    this.writer.soon();
    this.changed(keys, true);
  }

  private async hear({ ids, keys }: TabNews): Promise<void> {
    const read = await this.disk.readRecords(keys.filter(([table]) => isTable(table)));
    const records = read.records.filter((record) => record !== undefined);
    if (read.meta) this.foreign(read.meta, records, ids);
  }

  /** Takes what another tab committed onto this screen. */
  private foreign(meta: Meta, records: readonly RecordState[], ids: readonly string[]): void {
    const keys = records.map(({ table, id }): RecordKey => [table, id]);
    this.shown.adopt(meta, records, ids, true);
    this.undoRecord.forget();
    this.changed(keys, false);
  }

  private changeMeta(change: (meta: Meta) => Meta): Promise<void> {
    return this.inTurn(async () => {
      this.shown.meta = await this.disk.transact({}, ({ meta }) => {
        const made = change(meta ?? this.shown.meta);
        return { write: { meta: made }, answer: made };
      });
      this.undoRecord.forget();
      this.changed([], true);
    });
  }

  private changed(keys: readonly RecordKey[], here: boolean): void {
    for (const listener of this.listeners) listener({ keys, here });
  }
}
