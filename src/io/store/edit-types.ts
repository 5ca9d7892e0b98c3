import type { Draft } from '../../book/merge/index.ts';
import type { UserError } from '../../units/index.ts';
import type { RecordKey } from './book-disk.ts';

/** Who edits, on which device: a name and a word, no account. */
export interface Editor {
  readonly who: string;
  readonly device: string;
}

/** An edit that the device could not keep; it is on this screen alone. */
export interface Unsaved {
  readonly draft: Draft;
  readonly blobs: ReadonlyMap<string, Blob>;
  readonly error: UserError;
}

/** What changed, for whoever shows it. `here`: by this tab. */
export interface BookChange {
  readonly keys: readonly RecordKey[];
  readonly here: boolean;
}
