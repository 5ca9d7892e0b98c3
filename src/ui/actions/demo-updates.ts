import { type Mark, SETTINGS_ID } from '../../book/index.ts';
import { type Change, composeDraft, emptyState, finish, type Update } from '../../book/merge/index.ts';
import type { SiteList } from '../../io/index.ts';
import type { RoadPosts } from '../../workers/index.ts';
import { slugOf } from '../share/slug-of.ts';

/** A district's list of sites, its marks and its mile markers as the book's first update, so that every edit on them is a command like any other. */
export function demoUpdates(list: SiteList | null, marks: readonly Mark[], posts: readonly RoadPosts[]): Update[] {
  const sites = (list?.sites ?? []).map(
    ({ id, name, lon, lat, sideAzimuthDeg, road }): Change => ({
      table: 'sites',
      id,
      set: { name, place: { lon, lat, sideAzimuthDeg: sideAzimuthDeg % 360 }, roadName: road },
    }),
  );
  const put = marks
    .filter(({ kind }) => kind !== 'patient point')
    .map(
      ({ id, kind, name, geometry, trunkDiameterM, heightM }): Change => ({
        table: 'marks',
        id,
        set: { kind, name, geometry, trunkDiameterM, heightM },
      }),
    );
  const miles = posts.flatMap(({ road, ref, posts: own }): Change[] => {
    const routeId = slugOf(road);
    return [
      { table: 'routes', id: routeId, set: { name: road, ref } },
      ...own.map((post): Change => ({ table: 'mileMarkers', id: `${routeId}-${post.mile}`, set: { routeId, post } })),
    ];
  });
  // A made-up district stays one wherever the book goes.
  const invented = list !== null && / \(invented\)$/.test(list.district);
  const settings: Change[] = invented ? [{ table: 'settings', id: SETTINGS_ID, set: { invented } }] : [];
  const author = { who: 'the files', device: 'the files', label: 'Read the files' };
  const draft = composeDraft(emptyState(), [...settings, ...sites, ...put, ...miles], author);
  return draft ? [finish(draft, 'files', 1, [0, 0])] : [];
}
