import { askToPersist, openWebBook, readerSnapshot, storageState } from '../../src/io/web/store/index.ts';

/** The bare page over the store. Tests drive it by `window.store`; with #edit in its address it edits until it is killed. */
const store = { openWebBook, readerSnapshot, askToPersist, storageState };
export type StorePage = Window & { readonly store: typeof store };
Object.assign(window, { store });

const post = (path: string, body: unknown): Promise<unknown> =>
  fetch(path, { method: 'POST', body: JSON.stringify(body) });

/** Tells what the book holds, then edits without a pause; tells before each edit and once it is acknowledged. */
async function editForever(): Promise<void> {
  const { book } = await openWebBook('killed', { who: 'Officer A', device: 'desk' });
  const updates = await book.updates();
  await post('/opened', {
    recovered: book.recovered,
    copy: book.secondCopy,
    held: updates.map(({ actor, n, label }) => ({ id: `${actor}:${n}`, label })),
    blobs: await book.photoHashes(),
  });
  const photo = new Blob([new Uint8Array(150_000)]);
  let acknowledged: { id: string; label: string; blob: string | null } | null = null;
  for (let i = updates.length; ; i++) {
    const label = `edit ${i}`;
    void post('/edit', { acknowledged, begun: label, copy: book.secondCopy });
    const id = `s${i % 40}`;
    const known = book.record('sites', id) !== null;
    const hash = i.toString(16).padStart(64, '0');
    const set = known ? { name: label } : { name: label, place: { lon: 0, lat: 0, sideAzimuthDeg: 0 } };
    const picture = {
      siteId: id,
      hash,
      type: 'image/jpeg',
      widthPx: 1,
      heightPx: 1,
      sizeBytes: 150_000,
      showsPatient: false,
    };
    // Every fourth brings a photo: one edit, one transaction, longer on its way.
    const withPhoto = i % 4 === 3;
    const changes = [
      { table: 'sites' as const, id, set },
      ...(withPhoto ? [{ table: 'photos' as const, id: `p${i}`, set: picture }] : []),
    ];
    const update = await book.edit(changes, label, withPhoto ? new Map([[hash, photo]]) : new Map());
    acknowledged = { id: `${update!.actor}:${update!.n}`, label, blob: withPhoto ? hash : null };
  }
}

if (location.hash === '#edit') void editForever();
