import type { Browser, Page } from 'playwright-core';
import { desk, mapDrawn, sentenceLike } from '../../browser/page.ts';
import { manySites } from './many-sites.ts';
import { spread } from './spread.ts';
import { type Task, type TracedTasks, traceTasks } from './trace-tasks.ts';

const SITES = 5000;
const WORDS = ['kettle', 'ladle 12', 'lantern creek', 'nothing such', '499'];
const ROUNDS = 3;
const SCROLL_STEPS = 60;

/** Opens the survey with 5,000 sites; prints what a search takes until its rows are drawn, and the tasks of a long scroll. */
export async function measureList(browser: Browser, url: string): Promise<void> {
  const book = Buffer.from(await manySites(SITES));
  const context = await browser.newContext(desk);
  const page = await context.newPage();
  // As a person would leave it: the reading of the roadside takes a core of its own.
  await page.addInitScript(() => sessionStorage.setItem('brinkbook-roadside-stopped', 'yes'));
  await page.route('**/demo/tamarrow.brinkbook', (route) => route.fulfill({ body: book }));
  await page.goto(`${url}/#/survey`);
  await sentenceLike(page, /5,000 sites/, 120_000);
  await page.locator('.site-row').first().waitFor();
  await mapDrawn(page).catch(() => console.log('  (the map was still drawing)'));
  console.log(`a list of ${SITES} sites`);
  const search: Typed[] = [];
  const searching = await traceTasks(browser, page, async () => {
    for (let round = 0; round < ROUNDS; round++) search.push(...(await page.evaluate(typeAndWait, WORDS)));
  });
  console.log(`  a search, event to its rows:    ${spread(search.map(({ rows }) => rows))}`);
  console.log(`  a search, event to paint:       ${spread(search.map(({ painted }) => painted))}`);
  tell('while searching', searching);
  tell('while scrolling', await traceTasks(browser, page, () => scroll(page)));
  await context.close();
}

/** What a typed text takes, milliseconds from its event. */
interface Typed {
  /** Until the rows that fit stand in the page. */
  readonly rows: number;
  /** Until they have been painted: a frame of the map may come before. */
  readonly painted: number;
}

/** Runs in the page: types each text and empties the field again. */
async function typeAndWait(words: readonly string[]): Promise<Typed[]> {
  const field = document.getElementById('site-search') as HTMLInputElement;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  const shown = (): string =>
    document.querySelector('.site-table ul')?.getAttribute('aria-label') ?? 'no list, as nothing fits';
  const taken: Typed[] = [];
  for (const text of words.flatMap((word) => [word, ''])) {
    const before = shown();
    const began = performance.now();
    set.call(field, text);
    field.dispatchEvent(new Event('input', { bubbles: true }));
    let rows = 0;
    await new Promise<void>((done, failed) => {
      const look = (): void => {
        if (shown() !== before) {
          rows = performance.now() - began;
          // A task after the next frame's callback runs when that frame has been painted.
          requestAnimationFrame(() => setTimeout(done, 0));
        } else if (performance.now() - began > 20_000) failed(new Error(`The list still shows ${before}.`));
        else setTimeout(look, 0);
      };
      look();
    });
    taken.push({ rows, painted: performance.now() - began });
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return taken;
}

/** A long scroll by the wheel, as the browser scrolls. */
async function scroll(page: Page): Promise<void> {
  const box = (await page.locator('.site-table').boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  for (let i = 0; i < SCROLL_STEPS; i++) {
    await page.mouse.wheel(0, 400);
    await page.waitForTimeout(8);
  }
  await page.waitForFunction(
    (least) => Number(document.querySelector('.site-table li')?.getAttribute('aria-posinset')) > least,
    100,
    { timeout: 10_000 },
  );
}

function tell(when: string, { main }: TracedTasks): void {
  const of = (tasks: readonly Task[]): string => {
    const cpu = tasks.map(({ cpuMs }) => cpuMs);
    const over = cpu.filter((ms) => ms > 50).length;
    const wall = Math.max(0, ...tasks.map(({ wallMs }) => wallMs));
    return `${spread(cpu)}; ${over} over 50 ms, longest on the clock ${wall.toFixed(0)} ms`;
  };
  console.log(`  tasks ${when}, CPU:    ${of(main.filter(({ mapFrame }) => !mapFrame))}`);
  console.log(`  map frames ${when}, CPU: ${of(main.filter(({ mapFrame }) => mapFrame))}`);
}
