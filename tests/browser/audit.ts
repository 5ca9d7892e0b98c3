import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { root } from './app.ts';

interface RunOnly {
  readonly type: 'tag' | 'rule';
  readonly values: string[];
}

const axe = readFileSync(join(root, 'node_modules/axe-core/axe.min.js'), 'utf8');

/** What axe finds on the page against WCAG 2.2 AA, each with the markup it means; it must have found something to pass, too. */
export async function auditPage(page: Page): Promise<string[]> {
  // Once a page: to read and build it anew costs as much as what it then looks at.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe);
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const { passed, violations } = await page.evaluate(runAxe, { type: 'tag', values: tags } as RunOnly);
  return passed > 8 ? violations : [...violations, `axe looked at ${passed} rules only`];
}

/**
 * The same by day and by night: of what axe looks at, the light changes colours alone, and those come from the style sheet. The
 * drawn map, which axe does not see, is left as it is: to draw it anew twice would cost more than the rest.
 */
export async function auditByDayAndNight(page: Page): Promise<string[]> {
  const byDay = await auditPage(page);
  await inLight(page, 'night');
  const { looked, violations } = await page.evaluate(runAxe, { type: 'rule', values: ['color-contrast'] } as RunOnly);
  await inLight(page, 'day');
  return [...byDay, ...violations.map((one) => `by night, ${one}`), ...(looked > 0 ? [] : ['by night, nothing seen'])];
}

const inLight = (page: Page, light: 'day' | 'night'): Promise<void> =>
  page.evaluate((one) => {
    document.documentElement.dataset.light = one;
  }, light);

/** Runs in the page. */
async function runAxe(runOnly: RunOnly): Promise<{ passed: number; looked: number; violations: string[] }> {
  // What passes is counted alone, and nothing is said by a selector.
  const spare = { preload: false, resultTypes: ['violations'], selectors: false };
  // biome-ignore lint/suspicious/noExplicitAny: axe puts itself on the window.
  const { passes, incomplete, violations } = await (window as any).axe.run(document, { ...spare, runOnly });
  return {
    passed: passes.length,
    looked: passes.length + incomplete.length + violations.length,
    violations: violations.map(
      (one: { id: string; nodes: { html: string }[] }) =>
        `${one.id}: ${one.nodes.map((node) => node.html).join(' | ')}`,
    ),
  };
}

/**
 * Keys, fields and choices that show less than 44 pixels to a finger, each with its size; a label counts with its field, and a
 * number in the text that answers why is as wide as it is.
 */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.locator('button:visible, input:visible, select:visible, textarea:visible, summary:visible').evaluateAll((all) =>
    all.flatMap((target) => {
      const box = (target.closest('label:not(.field)') ?? target).getBoundingClientRect();
      const own = target.getBoundingClientRect();
      const [width, height] = [Math.max(box.width, own.width), Math.max(box.height, own.height)];
      if (own.width <= 1 || target.closest('[aria-hidden=true]')) return [];
      if ((width >= 43.9 || target.matches('.figure-key')) && height >= 43.9) return [];
      const words = (target.getAttribute('aria-label') ?? target.textContent ?? '').slice(0, 30);
      return [
        `${target.tagName.toLowerCase()}.${target.className} "${words}" ${Math.round(width)} × ${Math.round(height)}`,
      ];
    }),
  );
