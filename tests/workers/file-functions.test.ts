import { describe, expect, it } from 'vitest';
import { logOfBook } from '../../src/io/book-file/log/index.ts';
import { sha256, writeGeoJson } from '../../src/io/index.ts';
import { fileFunctions, transferListOf } from '../../src/workers/index.ts';
import { sampleBook, samplePhotos } from '../helpers/sample-book.ts';
import { exifBlock, sampleImages } from '../helpers/sample-images.ts';

let ids = 0;
const functions = fileFunctions(null, () => `id-${++ids}`);
const never = new AbortController().signal;
const all = { crashes: true, patientPhotos: true };

describe('the functions of the files worker, called directly', () => {
  it('take a photo and hand its bytes over', async () => {
    const file = new Blob([sampleImages['image/jpeg'](exifBlock({ little: true, orientation: 1 }))]);
    const taken = await functions.takePhoto({ file, name: 'a.jpg' });
    expect(taken.fields).toMatchObject({ widthPx: 30, heightPx: 20, sizeBytes: taken.bytes.length });
    expect(transferListOf(taken)).toEqual([taken.bytes.buffer]);
  });

  it('preview places and crash records', async () => {
    const book = sampleBook();
    const file = new Blob([writeGeoJson(book, { sites: null, crashes: false })]);
    const { items } = await functions.readPlaces({ file, name: 'a.geojson', book });
    expect(items.length).toBeGreaterThan(5);
    expect(items.every(({ exists }) => exists)).toBe(true);
    const crashes = new Blob(['date,lat,lon,severity\n2020-01-01,44,-128,K\n']);
    const found = await functions.readCrashes({ file: crashes, name: 'a.csv', bounds: null, sourceId: null });
    expect(found.crashes.map(({ severity }) => severity)).toEqual(['killed']);
  });

  it('write a book file and read it back', async () => {
    const hashes = [await sha256(samplePhotos.jpeg), await sha256(samplePhotos.png)];
    const updates = logOfBook(sampleBook('word', hashes), { actor: 'a', who: 'A', device: 'a', atMs: 1 });
    const photos = new Map([samplePhotos.jpeg, samplePhotos.png].map((bytes, i) => [hashes[i]!, new Blob([bytes])]));
    const made = await functions.writeBook({ updates, photos, asked: all, content: 'whole', writtenAtMs: 1 });
    expect(transferListOf(made)).toEqual([made.bytes.buffer]);
    const read = await functions.readBook({ file: new Blob([made.bytes]), name: 'a.brinkbook' }, never);
    expect(read.updates).toEqual(updates);
    expect([...read.photos.keys()].sort()).toEqual([...hashes].sort());
    await expect(functions.readBook({ file: new Blob(['x']), name: 'b' }, never)).rejects.toThrow(
      /^b is neither a book file/,
    );
    const aborted = AbortSignal.abort();
    await expect(functions.readBook({ file: new Blob([made.bytes]), name: 'a' }, aborted)).rejects.toThrow(/abort/i);
  });
});
