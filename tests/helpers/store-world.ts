import type { BookDisk, DiskWrite, Editor, SecondCopy, TabChannel, TabNews, World } from '../../src/io/store/index.ts';
import { UserError } from '../../src/units/index.ts';

export const editor: Editor = { who: 'Officer A', device: 'desk' };
export const place = { lon: -128, lat: 44, sideAzimuthDeg: 90 };
export const site = (id: string, name = 'Bend') => ({ table: 'sites' as const, id, set: { name, place } });
export const rename = (name: string, id = 's') => ({ table: 'sites' as const, id, set: { name } });

/** Time that the test sets, ids in order, and tabs that hear each other in the same process. */
export function world(tag: string, hub?: Hub, copy: SecondCopy | null = null): World & { ms: number } {
  let count = 0;
  return {
    ms: 1_000_000,
    now() {
      return this.ms;
    },
    mintId: () => `${tag}-${++count}`,
    channel: hub?.join() ?? null,
    copy,
  };
}
export class Hub {
  private readonly members = new Set<(news: TabNews) => void>();
  join(): TabChannel {
    let own: (news: TabNews) => void = () => undefined;
    return {
      tell: (news) => {
        for (const hear of this.members) if (hear !== own) hear(structuredClone(news));
      },
      hear: (listener) => {
        own = listener;
        this.members.add(listener);
        return () => this.members.delete(listener);
      },
      close: () => undefined,
    };
  }
}
/** A disk that refuses what `full` says. */
export const refusing = (disk: BookDisk, full: (write: DiskWrite) => boolean): BookDisk => ({
  ...disk,
  transact: (want, decide) =>
    disk.transact(want, (read) => {
      const found = decide(read);
      if (full(found.write)) throw new UserError('disk-full', 'There is no room left.');
      return found;
    }),
});
export const names = (book: { book(): { tables: { sites: { name: string }[] } } }) =>
  book.book().tables.sites.map(({ name }) => name);
