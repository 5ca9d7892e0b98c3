import { describe, expect, it } from 'vitest';
import { type Change, canonical, holds, snapshotOf, type Update, updateId } from '../../../src/book/merge/index.ts';
import { type Random, seededRandom } from '../../../src/units/index.ts';
import { Device } from './devices.ts';

const HISTORIES = 10_000;
const MOST_STEPS = 40;
const DAY_MS = 86_400_000;

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.next() * list.length)]!;

function shuffled<T>(random: Random, list: readonly T[]): T[] {
  const out = [...list];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random.next() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}

const place = (random: Random) => ({ lon: Math.floor(random.next() * 3), lat: 0, sideAzimuthDeg: 0 });

/** A change of one of few records, so that devices meet; new records get what they must have. */
function change(random: Random, device: Device): Change {
  const id = pick(random, ['a', 'b', 'c']);
  if (random.next() < 0.25) {
    const known = device.state.records.get('ropes')!.get(id)?.cells.lengthM?.writes.length;
    const set = known && random.next() < 0.5 ? {} : { kitId: 'k', lengthM: 60, count: 1 };
    return { table: 'ropes', id, set: { ...set, label: pick(random, ['x', 'y', null]) } };
  }
  const cells = device.state.records.get('sites')!.get(id)?.cells;
  // Not there, or only a later change of it has come so far.
  if (!cells?.name?.writes.length || !cells.place?.writes.length) {
    return { table: 'sites', id, set: { name: pick(random, ['A', 'B']), place: place(random) } };
  }
  return pick<() => Change>(random, [
    () => ({ table: 'sites', id, set: { name: pick(random, ['A', 'B', 'C']) } }),
    () => ({ table: 'sites', id, set: { place: place(random), roadName: pick(random, ['R', null]) } }),
    () => ({ table: 'sites', id, set: { notes: pick(random, ['', 'wet']) } }),
    () => ({ table: 'sites', id, set: { deleted: random.next() < 0.6 } }),
  ])();
}

/** The definition: of every field the writes that no update names, by "table/id/field". */
function bySetDefinition(all: readonly Update[]): Map<string, Map<string, string>> {
  const named = new Map<string, Set<string>>();
  for (const { ops } of all) {
    for (const [table, id, field, , over] of ops) {
      const key = `${table}/${id}/${field}`;
      const set = named.get(key) ?? new Set();
      named.set(key, set);
      for (const one of over) set.add(one);
    }
  }
  const left = new Map<string, Map<string, string>>();
  for (const update of all) {
    for (const [table, id, field, value] of update.ops) {
      const key = `${table}/${id}/${field}`;
      const cell = left.get(key) ?? new Map<string, string>();
      left.set(key, cell);
      if (!named.get(key)!.has(updateId(update))) cell.set(updateId(update), canonical(value));
    }
  }
  return left;
}

function cellsOf(device: Device): Map<string, Map<string, string>> {
  const found = new Map<string, Map<string, string>>();
  for (const [table, records] of device.state.records) {
    for (const record of records.values()) {
      for (const [field, cell] of Object.entries(record.cells)) {
        if (cell.gone) throw new Error(`${record.id}.${field} still waits for ${cell.gone}`);
        const writes = cell.writes.map(({ value, by }) => [by.id, canonical(value)] as const);
        found.set(`${table}/${record.id}/${field}`, new Map(writes));
      }
    }
  }
  return found;
}

const asText = (cells: Map<string, Map<string, string>>): string =>
  canonical([...cells].map(([key, writes]) => [key, [...writes].sort()]).sort(([a], [b]) => (a! < b! ? -1 : 1)));

interface Counts {
  acknowledged: number;
  contested: number;
  late: number;
}

function history(random: Random, counts: Counts): void {
  const devices = Array.from({ length: 2 + Math.floor(random.next() * 4) }, (_, i) => new Device(`d${i}`));
  const skew = devices.map(() => (random.next() - 0.5) * 2e6 + (random.next() < 0.05 ? 70 * 365 * DAY_MS : 0));
  const acknowledged: Update[] = [];
  const steps = 5 + Math.floor(random.next() * (MOST_STEPS - 5));
  for (let step = 0; step < steps; step++) {
    const at = Math.floor(random.next() * devices.length);
    const device = devices[at]!;
    const wallMs = 1.7e12 + step * 1000 + skew[at]!;
    const what = random.next();
    if (what < 0.55) {
      const update = device.edit([change(random, device)], wallMs);
      if (update) acknowledged.push(update);
    } else if (what < 0.7) {
      acknowledged.push(...(device.turn(random.next() < 0.6 ? 'undoes' : 'redoes', wallMs)?.updates ?? []));
    } else {
      // A part of what another holds, in any order: later updates may come before those they replace.
      const other = pick(random, devices);
      device.receive(shuffled(random, [...other.log.values()]).filter(() => random.next() < 0.7));
    }
  }
  const whole = new Map(devices.flatMap((device) => [...device.log]));
  const all = [...whole.values()];
  for (const device of devices) {
    const before = device.log.size;
    device.receive(shuffled(random, [...all, ...all]));
    counts.late += all.length - before;
  }
  const defined = asText(bySetDefinition(all));
  const books = devices.map((device) => canonical(snapshotOf(device.state)));
  for (const device of devices) {
    const held = asText(cellsOf(device));
    if (held !== defined) expect(held).toBe(defined);
    const lost = acknowledged.filter((update) => !holds(device.state.vector, updateId(update)));
    if (lost.length > 0) expect(lost).toEqual([]);
  }
  if (new Set(books).size > 1) expect(books).toEqual(books.map(() => books[0]));
  // Not one acknowledged write is missing: it stands, or a later one names it.
  const cells = cellsOf(devices[0]!);
  const named = new Set(
    all.flatMap(({ ops }) =>
      ops.flatMap(([table, id, field, , over]) => over.map((one) => `${table}/${id}/${field}/${one}`)),
    ),
  );
  const missing = acknowledged.flatMap((update) =>
    update.ops.filter(([table, id, field]) => {
      const stands = cells.get(`${table}/${id}/${field}`)!.has(updateId(update));
      return stands === named.has(`${table}/${id}/${field}/${updateId(update)}`);
    }),
  );
  if (missing.length > 0) expect(missing).toEqual([]);
  counts.acknowledged += acknowledged.length;
  counts.contested += snapshotOf(devices[0]!.state).contested.length;
}

describe('random histories of up to five devices', () => {
  it(`${HISTORIES} end equal on every device, as the set of updates defines, with no acknowledged edit missing`, () => {
    const random = seededRandom(42);
    const counts: Counts = { acknowledged: 0, contested: 0, late: 0 };
    for (let i = 0; i < HISTORIES; i++) history(random, counts);
    console.log(
      `${HISTORIES} histories: ${counts.acknowledged} acknowledged edits, ${counts.late} deliveries of news, ${counts.contested} contested fields.`,
    );
    expect(counts.acknowledged).toBeGreaterThan(5 * HISTORIES);
    expect(counts.contested).toBeGreaterThan(HISTORIES / 2);
  }, 120_000);
});
