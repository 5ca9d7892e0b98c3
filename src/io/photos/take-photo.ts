import type { PhotoRecord } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';
import { sha256 } from '../book-file/sha256.ts';
import type { PhotoShrinker } from '../ports.ts';
import { imageSize } from './image-size.ts';
import { type ImageType, imageTypeOf } from './image-type.ts';
import { readExif } from './read-exif.ts';
import { stripMetadata } from './strip-metadata.ts';

/** The largest file that is taken, bytes. */
const LARGEST = 100e6;
/** The largest that is kept where nothing can shrink it, bytes. */
const LARGEST_KEPT = 12e6;
/** Longest side of a shrunk photo, pixels: readable on a sheet and on a screen; judgement. */
const LONGEST_SIDE_PX = 2000;

/** A photo ready for the book: its bytes, the fields of its record, and the place that was read from it. */
export interface TakenPhoto {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly fields: Pick<PhotoRecord, 'hash' | 'type' | 'widthPx' | 'heightPx' | 'sizeBytes' | 'takenOn'>;
  /** Where the camera says it was taken. It goes into the book only where the surveyor chooses so, and never with the file. */
  readonly at: LonLat | null;
}

/**
 * Takes a photo from a camera or a file: reads its place and day, shrinks it where `shrinker` can, takes everything but the picture
 * out, and hashes it. The same photo taken twice has the same hash. Throws a `UserError` for what is no usable image.
 */
export async function takePhoto(
  given: Uint8Array<ArrayBuffer>,
  name: string,
  shrinker: PhotoShrinker | null,
): Promise<TakenPhoto> {
  if (given.length > LARGEST) throw refusal(name, `has ${given.length} bytes, over the ${LARGEST} that are taken`);
  const type = imageTypeOf(given);
  if (!type && !shrinker) throw refusal(name, 'is no JPEG, PNG or WebP');
  const facts = type ? readExif(given, type) : { at: null, takenOn: null, orientation: 1 };
  const shrunk = shrinker && (await shrinker.shrink(given, LONGEST_SIDE_PX));
  const bytes = shrunk ?? given;
  const kept: ImageType | null = imageTypeOf(bytes);
  // A canvas turns the picture upright when it draws it; a file as it came still has to be turned by whoever shows it.
  const orientation = shrunk ? 1 : facts.orientation;
  const plain = kept && stripMetadata(bytes, kept, orientation);
  const size = kept && plain && imageSize(plain, kept);
  if (!kept || !plain || !size) throw refusal(name, type ? 'is damaged' : 'is no picture that can be read');
  if (plain.length > LARGEST_KEPT) throw refusal(name, `has ${plain.length} bytes and cannot be made smaller here`);
  const turned = orientation >= 5;
  return {
    bytes: plain,
    fields: {
      hash: await sha256(plain),
      type: kept,
      widthPx: turned ? size.heightPx : size.widthPx,
      heightPx: turned ? size.widthPx : size.heightPx,
      sizeBytes: plain.length,
      takenOn: facts.takenOn,
    },
    at: facts.at,
  };
}

const refusal = (name: string, what: string): UserError =>
  new UserError('photo', `${name} ${what}; take the photo as JPEG, PNG or WebP.`);
