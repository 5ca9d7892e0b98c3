import type { Book } from '../../book/index.ts';
import type { Change } from '../../book/merge/index.ts';
import { memoryDisk } from '../../io/index.ts';
import { type BookChange, type OpenBook, openBook } from '../../io/store/index.ts';
import { openWebBook, type WebBook } from '../../io/web/store/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { emptyBookState, shownTables, useBook } from './book.ts';
import { useEditor } from './editor.ts';

/** The book's only writer on the screens. */
export interface BookLog {
  /** Opens the browser's book of a name in place of the one that is shown; one in memory where the browser keeps nothing. */
  open(name: string): Promise<OpenBook>;
  /** One command of one person: true once it is kept. A failure is told in the book's state. */
  commit(label: string, changes: readonly Change[], photos?: ReadonlyMap<string, Blob>): Promise<boolean>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  /** Tries again to keep what could not be kept. */
  saveAgain(): Promise<void>;
}

/** Edits are shown once they are durable, so that what stands on the screen is kept; every edit is one update of the log. */
export function createBookLog(): BookLog {
  let opened: WebBook | null = null;
  const set = useBook.setState;

  const tellStacks = async (book: OpenBook): Promise<void> => {
    const { undo, redo } = await book.canTurn();
    if (opened?.book === book) set({ undo, redo });
  };

  function take(book: OpenBook, { keys }: BookChange): void {
    const before = useBook.getState();
    const after: Record<string, Map<string, unknown>> = {};
    for (const [table, id] of keys) {
      const name = shownTables.find((one) => one === table);
      if (!name) continue;
      after[name] ??= new Map<string, unknown>(before[name]);
      const record = book.record(name, id);
      if (record && !record.deleted) after[name].set(id, record);
      else after[name].delete(id);
    }
    set({ ...after, ...keepingOf(book), unsaved: book.unsaved.length });
    void tellStacks(book);
  }

  /** Runs an edit; what goes wrong is told. */
  async function run(edit: (book: OpenBook) => Promise<unknown>): Promise<boolean> {
    if (!opened) return false;
    set(({ saving }) => ({ saving: saving + 1, problem: null }));
    try {
      await edit(opened.book);
      return true;
    } catch (error) {
      set({ problem: sentenceOf(error) });
      return false;
    } finally {
      set(({ saving }) => ({ saving: saving - 1 }));
    }
  }

  const turn = (way: 'undo' | 'redo'): Promise<boolean> =>
    run(async (book) => {
      const kept = (await book[way]()) ?? [];
      const names = [...new Set(kept.map(({ who }) => who))].join(', ');
      if (kept.length > 0) set({ problem: `Some of it stays: ${names} changed it since.` });
    });

  return {
    async open(name) {
      await opened?.close();
      const editor = useEditor.getState();
      let fleeting = false;
      try {
        opened = await openWebBook(name, editor);
      } catch {
        fleeting = true;
        const world = {
          now: () => Date.now(),
          mintId: () => crypto.randomUUID().replaceAll('-', ''),
          channel: null,
          copy: null,
        };
        const book = await openBook(memoryDisk(), world, editor);
        opened = { book, close: () => book.close() };
      }
      const { book } = opened;
      book.subscribe((change) => take(book, change));
      set({ ...emptyBookState, ...plainTables(book.book()), ...keepingOf(book), opened: book, fleeting });
      void tellStacks(book);
      return book;
    },
    commit: (label, changes, photos) => run((book) => book.edit(changes, label, photos)),
    undo: async () => void (await turn('undo')),
    redo: async () => void (await turn('redo')),
    saveAgain: async () => void (await run((book) => book.saveAgain())),
  };
}

/** How the book is kept. */
const keepingOf = (book: OpenBook) => ({
  remind: book.copyState().remind,
  recovered: book.recovered,
  secondCopy: book.secondCopy,
});

/** The tables that the screens hold, by id, without what is deleted. */
const plainTables = ({ tables }: Book) =>
  Object.fromEntries(
    shownTables.map((name) => [
      name,
      new Map(
        (tables[name] as readonly { id: string; deleted: boolean }[])
          .filter(({ deleted }) => !deleted)
          .map((record) => [record.id, record]),
      ),
    ]),
  );
