import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import {
  checkMethods,
  crashSeverities,
  eventKinds,
  fieldsOf,
  quantityNames,
  readingTools,
  recordedMarkKinds,
  SETTINGS_ID,
  siteTypes,
  tableNames,
} from '../../../src/book/index.ts';

const page = readFileSync(new URL('../../../docs/book-format.md', import.meta.url), 'utf8');

it('the format document names every table and exactly its fields', () => {
  const sections = new Map(
    page
      .split(/^##+ /m)
      .slice(1)
      .map((section) => [/^\w+/.exec(section)?.[0] ?? '', section] as const),
  );
  for (const table of tableNames) {
    const named = [...(sections.get(table) ?? '').matchAll(/^- `(\w+)`/gm)].map((found) => found[1]);
    expect(named, table).toEqual(fieldsOf(table).filter((field) => field !== 'deleted'));
  }
});

it('the format document names every word that a field may hold', () => {
  const lists = [siteTypes, recordedMarkKinds, quantityNames, readingTools, checkMethods, eventKinds, crashSeverities];
  for (const list of lists) expect(page).toContain(list.map((word) => `"${word}"`).join(', '));
  expect(page).toContain(`id \`${SETTINGS_ID}\``);
});
