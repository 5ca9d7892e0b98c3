import { type Book, live } from '../../book/index.ts';
import type { MilePost } from '../../road/index.ts';

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
