import type { Page } from 'playwright-core';
import { restoreBook } from '../../src/book/index.ts';
import {
  applyUpdate,
  type Change,
  composeDraft,
  emptyState,
  finish,
  type MergeState,
  snapshotOf,
} from '../../src/book/merge/index.ts';
import { chromiumArguments, chromiumPath, launchChromium } from '../browser/chromium.ts';
import type { StorePage } from '../browser/store-page.ts';
import { serveStorePage } from '../browser/store-server.ts';
import { sideBySide, span } from './harness.ts';

const SITES = 10_000;
const RUNS = 5;
const EDITS = 200;

/** A book of 10,000 sites: the merge in Node, then the store in Chromium, from a cold page. */
export async function benchBook(print: (line: string) => void): Promise<void> {
  print(`A book of ${SITES} sites, milliseconds, least and most of ${RUNS}`);
  const state = emptyState();
  apply(
    state,
    Array.from({ length: SITES }, (_, i) => site(i)),
    1,
  );
  const text = JSON.stringify(snapshotOf(state));
  let n = 1;
  const times = await sideBySide(RUNS, {
    parse: () => (JSON.parse(text) as { tables: { sites: unknown[] } }).tables.sites.length,
    check: () => restoreBook(JSON.parse(text), 'bench').tables.sites.length,
    plain: () => snapshotOf(structuredClone(state)).tables.sites.length,
    clone: () => structuredClone(state).records.size,
    build: () =>
      apply(
        emptyState(),
        Array.from({ length: SITES }, (_, i) => site(i)),
        1,
      ),
    edits: () => {
      for (let i = 0; i < EDITS; i++) apply(state, [{ table: 'sites', id: `s${i}`, set: { name: `New ${n}` } }], ++n);
      return n;
    },
    editAndPlain: () => {
      apply(state, [{ table: 'sites', id: 's7', set: { name: `Newer ${n}` } }], ++n);
      return snapshotOf(state).tables.sites.length;
    },
  });
  const ratio = (ms: number): string => `${(ms / times.parse.min).toFixed(1)} × parsing`;
  print(`plain book of ${(text.length / 1e6).toFixed(1)} MB: parsing it          ${span(times.parse)}`);
  print(`  parsing and checking every field       ${span(times.check)} = ${ratio(times.check.min)}`);
  print(
    `  making it from the merge's state       ${(times.plain.min - times.clone.min).toFixed(1)} = ${ratio(times.plain.min - times.clone.min)}`,
  );
  print(`  making it anew after one edit          ${span(times.editAndPlain)} = ${ratio(times.editAndPlain.min)}`);
  print(`  the state from one update of all sites ${span(times.build)} = ${ratio(times.build.min)}`);
  print(
    `  an edit without the disk               ${(times.edits.min / EDITS).toFixed(3)}–${(times.edits.max / EDITS).toFixed(3)}`,
  );
  if (!chromiumPath()) print('No Chromium: the store is not measured.');
  else await inChromium(print);
}

const site = (i: number): Change => ({
  table: 'sites',
  id: `s${i}`,
  set: {
    name: `Bend ${i}`,
    place: { lon: -128 + i * 1e-5, lat: 44 + (i % 100) * 1e-4, sideAzimuthDeg: i % 360 },
    roadName: `Road ${i % 40}`,
    type: 'bend',
    notes: 'Guardrail ends before the drop; soft shoulder when wet.',
    patients: 1,
  },
});

function apply(state: MergeState, changes: readonly Change[], n: number): number {
  const draft = composeDraft(state, changes, { who: 'Officer A', device: 'desk', label: 'bench' });
  if (draft) applyUpdate(state, finish(draft, 'a', n, [n, 0]), 'bench');
  return n;
}

async function inChromium(print: (line: string) => void): Promise<void> {
  const server = await serveStorePage();
  const browser = await launchChromium(chromiumArguments);
  try {
    const context = await browser.newContext();
    const fill = await context.newPage();
    await fill.goto(server.url);
    await fill.evaluate(
      openAndFill,
      Array.from({ length: SITES }, (_, i) => site(i)),
    );
    await fill.close();
    const opens: Opened[] = [];
    for (let run = 0; run < RUNS; run++) {
      const page = await context.newPage();
      await page.goto(server.url);
      const opened = await page.evaluate(openAndEdit, run === RUNS - 1 ? EDITS : 0);
      opens.push({ ...opened, heapMb: await heapMb(page) });
      await page.close();
    }
    const list = (of: (one: Opened) => number): string => {
      const all = opens.map(of);
      return `${Math.min(...all).toFixed(0)}–${Math.max(...all).toFixed(0)}`;
    };
    const edits = opens.at(-1)!.edits.sort((a, b) => a - b);
    const at = (share: number): string => edits[Math.floor(share * (edits.length - 1))]!.toFixed(1);
    print(
      `in Chromium ${browser.version()}, a fresh page each time: opening ${list(({ openMs }) => openMs)}, plain book ${list(({ plainMs }) => plainMs)}`,
    );
    print(`  reader's snapshot ${list(({ readMs }) => readMs)} (the merge not loaded)`);
    print(`  an edit, durable: least ${at(0)}, median ${at(0.5)}, 95 % ${at(0.95)}, most ${at(1)} of ${edits.length}`);
    print(`  memory in use with the book and its plain form open: ${list(({ heapMb: mb }) => mb)} MB`);
  } finally {
    await browser.close();
    server.close();
  }
}

interface Opened {
  openMs: number;
  plainMs: number;
  readMs: number;
  edits: number[];
  heapMb: number;
}

/** Runs in the page: a book with all sites and its snapshot. */
async function openAndFill(changes: Change[]): Promise<void> {
  const { store } = window as unknown as StorePage;
  const { book, close } = await store.openWebBook('bench', { who: 'Officer A', device: 'desk' });
  await book.edit(changes, 'Fill');
  await book.settle();
  await close();
}

/** Runs in the page: opens the book, makes its plain form, edits. */
async function openAndEdit(count: number): Promise<Omit<Opened, 'heapMb'>> {
  const { store } = window as unknown as StorePage;
  const started = performance.now();
  const read = await store.readerSnapshot('bench');
  const readMs = performance.now() - started;
  if (!read?.book.tables.sites.length) throw new Error('No snapshot.');
  const start = performance.now();
  const opened = await store.openWebBook('bench', { who: 'Officer A', device: 'desk' });
  const openMs = performance.now() - start;
  Object.assign(window, { opened });
  const { book } = opened;
  const plain = performance.now();
  book.book();
  const plainMs = performance.now() - plain;
  const edits: number[] = [];
  for (let i = 0; i < count; i++) {
    const from = performance.now();
    await book.edit([{ table: 'sites', id: `s${(i * 37) % 10_000}`, set: { name: `New ${i}` } }], 'Rename');
    edits.push(performance.now() - from);
  }
  return { openMs, plainMs, readMs, edits };
}

async function heapMb(page: Page): Promise<number> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('HeapProfiler.collectGarbage');
  return (await devtools.send('Runtime.getHeapUsage')).usedSize / 1e6;
}
