import { expect, it } from 'vitest';
import {
  type CallPack,
  forgetKept,
  keptState,
  memoryStore,
  noteKept,
  readKeptStudy,
  readPack,
  writeKeptStudy,
  writePack,
} from '../../../src/io/offline/index.ts';
import type { Study } from '../../../src/study/index.ts';
import { madePack } from '../../ui/call/sites.ts';

const pack: CallPack = {
  schema: 'brinkbook/call@1',
  district: 'Invented',
  invented: true,
  madeAtMs: 5,
  madeFrom: 'x',
  units: 'us',
  bounds: { west: -129, south: 43, east: -127, north: 45 },
  ...madePack,
};
const study = { schema: 'brinkbook/study@1', sentence: 'Plan as steep.' } as Study;

function notes() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
}

it('a pack and its studies come back as they were, and the state counts them', async () => {
  const store = memoryStore();
  const book = notes();
  expect(await keptState(store, book)).toEqual({ pack: null, studies: 0, elevationPages: 0, lost: null });
  for (const { id } of pack.sites) await writeKeptStudy(store, id, 'dry', study);
  await store.write('pages/x/v/0', new Uint8Array(3));
  await writePack(store, pack);
  noteKept(book, pack);
  expect(await readPack(store)).toEqual(pack);
  expect((await readKeptStudy(store, 'kettle', 'dry'))?.study).toEqual(study);
  expect(await readKeptStudy(store, 'kettle', 'ice')).toBeNull();
  expect(await keptState(store, book)).toMatchObject({ studies: 4, elevationPages: 1, lost: null });
});

it('what was kept once and is gone, whole or in part, is told', async () => {
  const store = memoryStore();
  const book = notes();
  for (const { id } of pack.sites) await writeKeptStudy(store, id, 'dry', study);
  await store.write('pages/x/v/0', new Uint8Array(3));
  await writePack(store, pack);
  noteKept(book, pack);
  await store.remove('call/study/oak/dry');
  expect((await keptState(store, book)).lost).toEqual({ district: 'Invented', sites: 4, atMs: 5 });
  await writeKeptStudy(store, 'oak', 'dry', study);
  expect((await keptState(store, book)).lost).toBeNull();
  await store.remove('pages/x/v/0');
  expect((await keptState(store, book)).lost).not.toBeNull();
  for (const key of await store.keys('')) await store.remove(key);
  expect(await keptState(store, book)).toMatchObject({ pack: null, studies: 0, lost: { sites: 4 } });
});

it('a site of which no study could be made is no loss, nor are pages of rasters that lie on the device as files', async () => {
  const store = memoryStore();
  const book = notes();
  for (const { id } of pack.sites) if (id !== 'oak') await writeKeptStudy(store, id, 'dry', study);
  await writePack(store, { ...pack, withoutStudy: ['oak'], groundHere: true });
  noteKept(book, pack);
  expect(await keptState(store, book)).toMatchObject({ studies: 3, elevationPages: 0, lost: null });
  await store.remove('call/study/kettle/dry');
  expect((await keptState(store, book)).lost).not.toBeNull();
});

it('what is forgotten for another district is no loss', async () => {
  const store = memoryStore();
  const book = notes();
  for (const { id } of pack.sites) await writeKeptStudy(store, id, 'dry', study);
  await writePack(store, pack);
  noteKept(book, pack);
  await forgetKept(store, book);
  expect(await keptState(store, book)).toEqual({ pack: null, studies: 0, elevationPages: 0, lost: null });
  expect(await readKeptStudy(store, 'kettle', 'dry')).toBeNull();
});
