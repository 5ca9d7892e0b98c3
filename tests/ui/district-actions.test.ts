import { beforeEach, expect, test } from 'vitest';
import type { Deps } from '../../src/ui/actions/deps.ts';
import { createDistrictActions } from '../../src/ui/actions/district-actions.ts';
import type { Navigate } from '../../src/ui/actions/navigate.ts';
import type { StudyActions } from '../../src/ui/actions/study-actions.ts';
import { useDistrict } from '../../src/ui/state/index.ts';

const files = { elevation: [new File([], 'county.tif')], roads: null, marks: null, options: {} };

/** The actions on workers that answer at once, and on a book whose opening is in the test's hand. */
function actions() {
  let settle = { open: (): void => {}, fail: (_: Error): void => {} };
  const call = async (name: string) => (name === 'open' ? { list: null, marks: [], posts: [] } : undefined);
  const open = () =>
    new Promise((resolve, reject) => {
      const book = { book: () => ({ tables: { sites: [{}], marks: [] } }) };
      settle = { open: () => resolve(book), fail: reject };
    });
  const deps = { workers: { study: { call }, map: { call } }, log: { open } } as unknown as Deps;
  const study = { clear() {}, again() {} } as unknown as StudyActions;
  const district = createDistrictActions(deps, study, { go() {} } as unknown as Navigate);
  return { district, book: () => settle };
}
const turned = (turning: boolean) => expect.poll(() => useDistrict.getState().turning).toBe(turning);

// Other tests of the same worker may have opened a district.
beforeEach(() => useDistrict.setState({ district: null, opening: null, turning: false, problem: null }));

test('between two districts the new book stands alone, and is told to, until its ground is there', async () => {
  const { district, book } = actions();
  const opening = district.openOwn(files);
  await turned(true);
  expect(useDistrict.getState().district).toBeNull();
  book().open();
  expect(await opening).toBe(true);
  expect(useDistrict.getState()).toMatchObject({ turning: false, opening: null, district: { name: 'county.tif' } });
});

test('a book that does not open ends the turning too', async () => {
  const { district, book } = actions();
  const opening = district.openOwn(files);
  await turned(true);
  book().fail(new Error('no room'));
  expect(await opening).toBe(false);
  expect(useDistrict.getState()).toMatchObject({ turning: false, opening: null });
  expect(useDistrict.getState().problem).toContain('no room');
});
