import { describe, expect, it } from 'vitest';
import { canonical, type Update, updateId } from '../../src/book/merge/index.ts';
import { memoryDisk } from '../../src/io/memory/index.ts';
import { type BookDisk, type OpenBook, openBook } from '../../src/io/store/index.ts';
import { type Random, seededRandom } from '../../src/units/index.ts';
import { Hub, rename, site, world } from '../helpers/store-world.ts';

const HISTORIES = 300;

interface Device {
  readonly disk: BookDisk;
  readonly hub: Hub;
  tabs: OpenBook[];
}

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.next() * list.length)]!;

/** Two or three devices with up to three tabs each: edits, undo, redo, merges, closed and opened tabs, nobody waiting for anybody. */
async function history(random: Random, h: number): Promise<{ acknowledged: number; contested: number }> {
  let opened = 0;
  const tab = (device: Device, tag: string): Promise<OpenBook> =>
    openBook(device.disk, world(`${tag}${h}x${++opened}`, device.hub), { who: `Officer ${tag}`, device: tag });
  const devices: Device[] = [];
  for (const tag of ['a', 'b', 'c'].slice(0, 2 + Math.floor(random.next() * 2))) {
    const device: Device = { disk: memoryDisk(), hub: new Hub(), tabs: [] };
    device.tabs.push(await tab(device, tag));
    devices.push(device);
  }
  const acknowledged: Update[] = [];
  const pending: Promise<unknown>[] = [];
  for (let step = 0; step < 25; step++) {
    const device = pick(random, devices);
    const book = pick(random, device.tabs);
    const what = random.next();
    const id = pick(random, ['s', 't']);
    if (what < 0.5) {
      const known = book.record('sites', id) !== null;
      const change = known ? rename(pick(random, ['A', 'B', 'C']), id) : site(id);
      pending.push(book.edit([change], 'edit').then((update) => update && acknowledged.push(update)));
    } else if (what < 0.65) pending.push(random.next() < 0.6 ? book.undo() : book.redo());
    else if (what < 0.85) {
      const other = pick(random, pick(random, devices).tabs);
      pending.push(other.updates().then((updates) => book.receive(updates, 'file')));
    } else if (what < 0.95 && device.tabs.length < 3) device.tabs.push(await tab(device, book.editor.device));
    else if (device.tabs.length > 1) await device.tabs.splice(device.tabs.indexOf(book), 1)[0]!.close();
    if (random.next() < 0.3) await Promise.all(pending);
  }
  await Promise.all(pending);
  for (const { tabs } of devices)
    for (const { tabs: others } of devices) await tabs[0]!.receive(await others[0]!.updates(), 'file');
  const books: string[] = [];
  const logs: string[] = [];
  for (const device of devices) {
    for (const book of device.tabs) {
      await book.canTurn();
      books.push(canonical(book.book()));
    }
    const again = await tab(device, 'z');
    books.push(canonical(again.book()));
    const log = await again.updates();
    logs.push(canonical(log));
    const held = new Set(log.map(updateId));
    expect(acknowledged.filter((update) => !held.has(updateId(update)))).toEqual([]);
  }
  expect([new Set(books).size, new Set(logs).size]).toEqual([1, 1]);
  return { acknowledged: acknowledged.length, contested: devices[0]!.tabs[0]!.book().contested.length };
}

describe('devices with several tabs', () => {
  it(`end with one book over ${HISTORIES} random histories: what each tab shows is what each disk holds`, async () => {
    const random = seededRandom(5);
    let [acknowledged, contested] = [0, 0];
    for (let h = 0; h < HISTORIES; h++) {
      const found = await history(random, h);
      acknowledged += found.acknowledged;
      contested += found.contested;
    }
    expect(acknowledged).toBeGreaterThan(5 * HISTORIES);
    expect(contested).toBeGreaterThan(10);
  }, 60_000);
});
