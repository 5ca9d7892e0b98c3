import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { root } from '../../browser/app.ts';
import { desk, drawNothing, mapDrawn, pointAt, sentenceLike } from '../../browser/page.ts';
import { spread } from './spread.ts';
import { type Task, type TracedTasks, traceTasks } from './trace-tasks.ts';
import { type PageTimes, type Painted, watchAnswers, watchPanels } from './watch-page.ts';

const WARM_UP = 10;
const MOVES = 40;
/** Moves whose tasks are traced, which takes time of its own. */
const TRACED = 20;

/**
 * Drags the site along its road, then an apparatus of its layout; prints what both take. Twice: with the map's picture drawn by the
 * processor, and with its drawing going nowhere, as on a device whose graphics card draws it.
 */
export async function measureDrag(browser: Browser, url: string): Promise<void> {
  for (const drawn of [true, false]) {
    console.log(
      drawn ? "the map's picture drawn by the processor" : "the map's picture apart: its drawing goes nowhere",
    );
    await dragBoth(browser, url, drawn);
  }
}

async function dragBoth(browser: Browser, url: string, drawn: boolean): Promise<void> {
  const { sites } = JSON.parse(readFileSync(join(root, 'data/demo/sites.json'), 'utf8'));
  const siteOf = (id: string) => sites.find((site: { id: string }) => site.id === id);
  const { lon, lat, side } = siteOf('kettle-bend');
  // By its readings Kettle Bend is high, where no haul is drawn.
  const hauled = siteOf('tender-verge');
  const context = await browser.newContext(desk);
  const page = await context.newPage();
  await page.addInitScript(watchAnswers);
  if (!drawn) await page.addInitScript(drawNothing);
  // From so far that each move of 5 pixels is more than a station.
  await page.goto(`${url}/#/study/${lon},${lat},${side}@${lon},${lat},16.4`);
  await sentenceLike(page, /Plan as/);
  await mapDrawn(page);
  await page.evaluate(watchPanels);
  const { x, y } = await pointAt(page);
  await oneByOne(browser, page, 'site', { x, y }, (i) => {
    // To and fro along the road, more than a station at each move, so that every move has its own picture.
    const along = 5 * Math.abs((i % 30) - 15) + 5;
    return { x: x + along, y: y - along / 6 };
  });
  const pictures = await freely(page, { x, y });
  console.log(`  without pause: ${(pictures / 2).toFixed(1)} pictures a second`);

  // Near enough that the apparatus is larger than the finger's slack; a new page, as a sent address is opened.
  await page.goto('about:blank');
  await page.goto(`${url}/#/study/${hauled.id}@${hauled.lon},${hauled.lat},19.0`);
  await sentenceLike(page, /Plan as/);
  await page.getByRole('button', { name: 'map', exact: true }).click();
  await page.locator('.layout-lines .spot').first().waitFor({ timeout: 60_000 });
  await mapDrawn(page);
  await page.evaluate(watchPanels);
  const at = await page.evaluate(freeSpot);
  if (!at) throw new Error('No spot can be taken hold of: something lies over each.');
  await oneByOne(browser, page, 'spot', at, (i) => ({ x: at.x + 5 * Math.abs((i % 16) - 8) + 6, y: at.y }));
  await page.mouse.up();
  await context.close();
}

/** Runs in the page: where a press takes hold of an apparatus and of nothing over it, pixels; null for nowhere. */
function freeSpot(): { x: number; y: number } | null {
  for (const spot of document.querySelectorAll('.layout-lines .spot')) {
    const { x, y, width, height } = spot.querySelector('.outline')!.getBoundingClientRect();
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const at = { x: x + share * width, y: y + share * height };
      if (document.elementFromPoint(at.x, at.y)?.closest('.spot') === spot) return at;
    }
  }
  return null;
}

/** One move at a time, each waited for: the way of one event from finger to paint, then what its threads did. */
async function oneByOne(
  browser: Browser,
  page: Page,
  what: string,
  from: { x: number; y: number },
  to: (i: number) => { x: number; y: number },
): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const move = async (i: number): Promise<void> => {
    // Asked in the page beforehand: a look from outside at each frame would be work of its own.
    const painted = page.evaluate(() => (window as unknown as Watched).nextPicture());
    const { x, y } = to(i);
    await page.mouse.move(x, y);
    await painted;
  };
  for (let i = 1; i <= WARM_UP; i++) await move(i);
  await take(page);
  for (let i = WARM_UP + 1; i <= WARM_UP + MOVES; i++) await move(i);
  const times = await take(page);
  const traced = await traceTasks(browser, page, async () => {
    for (let i = 1; i <= TRACED; i++) await move(i);
  });
  await take(page);
  console.log(`dragging a ${what}, one move at a time`);
  tellPainted('a draft', times.draftPainted);
  tellPainted('a whole study', times.wholePainted);
  console.log(`  draft in its worker:                       ${spread(times.draft)}`);
  console.log(`  study in its worker:                       ${spread(times.study)}`);
  console.log(`  its answer on the main thread:             ${spread(times.answer)}`);
  console.log(
    `  frames of the map, apart:                  ${spread(times.mapFrames.map(({ from, to }) => to - from))}`,
  );
  console.log(`  all tasks over 50 ms, map frames too:      ${spread(times.long)}`);
  tellCpu(traced);
}

/** Panels: sentence, profile and layouts, painted together. */
function tellPainted(what: string, painted: readonly Painted[]): void {
  const label = (words: string): string => `  event to ${words}:`.padEnd(45);
  console.log(`${label(`panels painted, ${what}`)}${spread(painted.map(({ ms }) => ms))}`);
  if (painted.some(({ mapMs }) => mapMs >= 1)) {
    console.log(`${label('the same less the map’s frames')}${spread(painted.map(({ ms, mapMs }) => ms - mapMs))}`);
  }
}

/** CPU time, which other work on the machine does not lengthen as it does the clock's. */
function tellCpu({ main, workers }: TracedTasks): void {
  const cpu = (tasks: readonly Task[]): number[] => tasks.map(({ cpuMs }) => cpuMs);
  const each = (tasks: readonly Task[]): string => (cpu(tasks).reduce((sum, ms) => sum + ms, 0) / TRACED).toFixed(0);
  console.log(`  CPU of one move, mean: page ${each(main)} ms, workers ${each(workers)} ms`);
  console.log(`  CPU, tasks of the page:                    ${spread(cpu(main.filter(({ mapFrame }) => !mapFrame)))}`);
  console.log(`  CPU, map frames:                           ${spread(cpu(main.filter(({ mapFrame }) => mapFrame)))}`);
  console.log(`  CPU, worker tasks over 5 ms:               ${spread(cpu(workers).filter((ms) => ms > 5))}`);
}

/** As fast as a hand: 60 moves a second for two seconds; how many pictures come of them? */
async function freely(page: Page, { x, y }: { x: number; y: number }): Promise<number> {
  const began = performance.now();
  for (let i = 0; performance.now() - began < 2000; i++) {
    await page.mouse.move(x + 84 - (i % 84), y - 14);
    await page.waitForTimeout(16);
  }
  await page.mouse.up();
  const { draftPainted, wholePainted } = await take(page);
  return draftPainted.length + wholePainted.length;
}

interface Watched {
  readonly pageTimes: PageTimes;
  readonly nextPicture: () => Promise<void>;
}

/** What was noted since the last time. */
const take = (page: Page): Promise<PageTimes> =>
  page.evaluate(() => {
    const { draftPainted, wholePainted, draft, study, answer, long, mapFrames } = (window as unknown as Watched)
      .pageTimes;
    return {
      draftPainted: draftPainted.splice(0),
      wholePainted: wholePainted.splice(0),
      draft: draft.splice(0),
      study: study.splice(0),
      answer: answer.splice(0),
      long: long.splice(0),
      mapFrames: mapFrames.splice(0),
    };
  });
