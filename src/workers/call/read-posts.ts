import { type Book, live } from '../../book/index.ts';
import type { MilePost } from '../../road/index.ts';
import { UserError } from '../../units/index.ts';

/** The posts of one road, by its name or its number. */
export interface RoadPosts {
  readonly road: string;
  readonly ref: string | null;
  readonly posts: readonly MilePost[];
}

/** A book's mile markers, by route. */
export const postsOfBook = (book: Book): RoadPosts[] =>
  live(book, 'routes').map(({ id, name, ref }) => ({
    road: name,
    ref,
    posts: live(book, 'mileMarkers')
      .filter(({ routeId }) => routeId === id)
      .map(({ post }) => post),
  }));

interface PostsFile {
  readonly schema: 'brinkbook/demo-calibration@1';
  readonly roads: readonly {
    readonly road: string;
    readonly points: readonly { readonly mile: number; readonly lon: number; readonly lat: number }[];
  }[];
}

/** The demo district's mile markers from their JSON text; throws `UserError` with one sentence for anything else. */
export function readPosts(text: string, name: string): RoadPosts[] {
  let file: Partial<PostsFile> | null = null;
  try {
    file = JSON.parse(text);
  } catch {
    // Told below with everything else that is no such file.
  }
  if (file?.schema !== 'brinkbook/demo-calibration@1' || typeof file.roads?.map !== 'function') {
    throw new UserError('posts-shape', `${name} is no list of mile markers; make the demo again with npm run demo.`);
  }
  return file.roads.map(({ road, points }) => ({
    road,
    ref: null,
    posts: points.map(({ mile, lon, lat }) => ({ mile, at: { lon, lat } })),
  }));
}
