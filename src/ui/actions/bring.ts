import { FILES, isOfDemo, type Mark } from '../../book/index.ts';
import { composeDraft, emptyState, finish, readUpdate } from '../../book/merge/index.ts';
import type { OpenBook } from '../../io/store/index.ts';

// What files bring is taken once: from then on the book counts, with all that was changed and deleted in it.

/** Takes the demo's book file in; of a demo that an earlier version began what that lacked. */
export async function bringDemo(book: OpenBook, { updates }: { readonly updates: readonly unknown[] }): Promise<void> {
  const writers = book.heads().map(([actor]) => actor);
  if (writers.some(isOfDemo)) return;
  if (writers.length === 0) return void (await book.receive(updates, 'The demo'));
  const { laterDemo } = await import('./later-demo.ts');
  const file = updates.map((one) => readUpdate(one, 'The demo'));
  await book.receive(laterDemo(await book.updates(), file), 'The demo');
}

/** Takes the marks of a person's own files in as the book's first update, so that every edit on them is a command like any other. */
export async function bringMarks(book: OpenBook, { marks }: { readonly marks: readonly Mark[] }): Promise<void> {
  const { sites, marks: own } = book.book().tables;
  if (sites.length + own.length > 0) return;
  const put = marks
    .filter(({ kind }) => kind !== 'patient point')
    .map(({ id, kind, name, geometry, trunkDiameterM, heightM }) => ({
      table: 'marks' as const,
      id,
      set: { kind, name, geometry, trunkDiameterM, heightM },
    }));
  const draft = composeDraft(emptyState(), put, { who: 'the files', device: 'the files', label: 'Read the files' });
  await book.receive(draft ? [finish(draft, FILES, 1, [0, 0])] : [], 'The files');
}
