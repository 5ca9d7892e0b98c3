import { expect, test } from 'vitest';
import { emptyBook } from '../../../src/book/index.ts';
import { type PreviewItem, readPlaces } from '../../../src/io/index.ts';
import { changesOfItems, firstTakenAs, plainItem, previewWords, type TakenAs } from '../../../src/ui/book/bring-in.ts';
import { UserError } from '../../../src/units/index.ts';

const read = (text: string) => {
  let n = 0;
  return readPlaces(new TextEncoder().encode(text), 'a.csv', { book: emptyBook(), newId: () => `new-${++n}` });
};
const preview = read('name,lat,lon,kind\nFir,44,-128,tree\nBend,44.001,-128,\nFar,44.5,-128,\nNowhere,99,-128,\n');
const ask = async ({ name }: PreviewItem) => {
  if (name === 'Far') throw new UserError('off-road', 'No road lies within 50 m.');
  return { sideAzimuthDeg: 166, roadName: 'Old Spur' };
};

test('what a file says counts; a place without a kind is a site whose side is asked of the ground, or is left out with why', async () => {
  expect(previewWords(preview)).toBe('3 places, 1 not usable');
  expect(preview.items.map((item) => [item.name, plainItem(item), firstTakenAs(item)])).toEqual([
    ['Fir', true, null],
    ['Bend', true, 'site'],
    ['Far', true, 'site'],
  ]);
  const { changes, left } = await changesOfItems(preview.items, 'a.csv', ask);
  expect(changes.map(({ table, set }) => [table, set])).toEqual([
    ['marks', expect.objectContaining({ kind: 'tree', name: 'Fir' })],
    [
      'sites',
      expect.objectContaining({
        name: 'Bend',
        place: { lon: -128, lat: 44.001, sideAzimuthDeg: 166 },
        roadName: 'Old Spur',
      }),
    ],
  ]);
  expect(left).toEqual([{ where: 'row 4', why: 'No road lies within 50 m.' }]);
});

test('a person’s word makes it a mark, and nothing is asked of the ground', async () => {
  const said = new Map<string, TakenAs>([['Far', 'rock']]);
  const taken = (item: PreviewItem) => said.get(item.name) ?? firstTakenAs(item);
  const { changes, left } = await changesOfItems(preview.items.slice(2), 'a.csv', ask, taken);
  expect(changes.map(({ table, set }) => [table, set.kind, set.siteId])).toEqual([['marks', 'rock', null]]);
  expect(left).toEqual([]);
});

test('a place of which nobody says what it is stays out, and why is told', async () => {
  const { changes, left } = await changesOfItems(preview.items.slice(1, 2), 'a.csv', ask, () => null);
  expect(changes).toEqual([]);
  expect(left[0]!.why).toBe('The file does not say what this is; choose it in its line.');
});

test('a name of a megabyte is cut where it is read, and what came stays harmless', async () => {
  const { items } = read(`name,lat,lon,kind\n${'<b>'.repeat(350_000)},44,-128,tree\n`);
  expect(items[0]!.name).toHaveLength(200);
  const { changes } = await changesOfItems(items, 'a.csv', ask);
  expect(changes).toHaveLength(1);
});
