import type { Book, RecordOf, TableName } from '../../book/index.ts';
import {
  childrenByOwner,
  heads,
  isDeleted,
  type MergeState,
  note,
  partsOfId,
  plainRecord,
  type RecordState,
  recordKey,
  snapshotOf,
} from '../../book/merge/index.ts';
import type { Meta } from './book-disk.ts';

/** What one tab has on its screen: a state that changes only by what is durable. */
export class ShownState {
  readonly state: MergeState;
  meta: Meta;
  private plain: Book | null = null;
  /** Updates of others, in the order in which they came, while edits wait. */
  private arrived: string[] = [];

  constructor(meta: Meta, state: MergeState) {
    this.meta = meta;
    this.state = { ...state, vector: structuredClone(state.vector) };
  }

  /** The whole book, plain; the same object until something changes. */
  book(): Book {
    this.plain ??= snapshotOf(this.state);
    return this.plain;
  }

  /** One record, plain; null where the book has none, or not all of it yet. */
  record<T extends TableName>(table: T, id: string): RecordOf<T> | null {
    const record = this.state.records.get(table)!.get(id);
    if (!record) return null;
    const gone = record.cells.deleted?.writes.some(({ value }) => value === true);
    const children = gone ? (childrenByOwner(this.state).get(recordKey(table, id)) ?? []) : [];
    return plainRecord(record as RecordState & { table: T }, isDeleted(record, children));
  }

  heads(): [actor: string, n: number][] {
    return heads(this.state.vector);
  }

  /** Notes which updates are shown from now on; the function tells of any later one that it was not. */
  sight(): (id: string) => boolean {
    const { arrived } = this;
    const since = arrived.length;
    return (id) => !arrived.includes(id, since);
  }

  /** Puts records in the place of those shown, by updates of this tab or (`foreign`) of others. */
  adopt(meta: Meta, records: readonly RecordState[], ids: readonly string[], foreign: boolean): void {
    this.meta = meta;
    this.plain = null;
    for (const record of records) this.state.records.get(record.table)!.set(record.id, record);
    for (const id of ids) {
      const { actor, n } = partsOfId(id);
      note(this.state.vector, actor, n);
    }
    if (foreign) this.arrived.push(...ids);
  }

  /** No edit waits: nobody asks any more what came in between. */
  forgetArrived(): void {
    this.arrived = [];
  }
}
