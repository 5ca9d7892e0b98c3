import type { Change } from '../../../book/merge/index.ts';
import type { LonLat } from '../../../geo/index.ts';
import type { TakenPhoto } from '../../../io/index.ts';
import { files } from '../files.ts';

/** What a person says of a photo before it goes into the book. */
export interface PhotoWords {
  readonly siteId: string;
  readonly markId?: string | null;
  readonly caption: string;
  readonly showsPatient: boolean;
  /** Null or left out where nobody looked. */
  readonly showsPlate?: boolean | null;
  readonly keepPlace: boolean;
}

/** Reads a photo in the worker: shrunk, its camera data taken off, its place told beside it. Rejects with a `UserError`. */
export const readPhoto = (file: File): Promise<TakenPhoto> => files().call('takePhoto', { file, name: file.name });

/** The edit that puts a photo into the book, and its bytes by hash. */
export function photoEdit(taken: TakenPhoto, words: PhotoWords): { changes: Change[]; photos: Map<string, Blob> } {
  const { siteId, markId = null, caption, showsPatient, showsPlate = null, keepPlace } = words;
  const at: LonLat | null = keepPlace ? taken.at : null;
  const set = { siteId, markId, ...taken.fields, at, caption, showsPatient, showsPlate };
  return {
    changes: [{ table: 'photos', id: `photo-${crypto.randomUUID().slice(0, 18)}`, set }],
    photos: new Map([[taken.fields.hash, new Blob([taken.bytes], { type: taken.fields.type })]]),
  };
}
