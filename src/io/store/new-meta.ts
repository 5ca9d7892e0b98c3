import { BOOK_VERSION } from '../../book/index.ts';
import type { Meta, World } from './book-disk.ts';

/** Meta of a book that begins here. */
export const newMeta = (world: World): Meta => ({
  version: BOOK_VERSION,
  book: world.mintId(),
  actor: world.mintId(),
  next: 1,
  last: [0, 0],
  vector: new Map(),
  newer: 0,
  copyLeft: null,
});

/** The same book under a new writer's name: after a restore, an import of one's own file, a copied profile. */
export const asNewActor = (meta: Meta, world: World): Meta => ({ ...meta, actor: world.mintId(), next: 1 });
