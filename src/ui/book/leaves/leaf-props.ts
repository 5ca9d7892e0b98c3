import type { Book } from '../../../book/index.ts';

/** Every leaf is given the whole book. */
export interface LeafProps {
  readonly book: Book;
}
