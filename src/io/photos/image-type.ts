export type ImageType = 'image/jpeg' | 'image/png' | 'image/webp';

/** What an image's first bytes say that it is, or null for anything that a book does not keep. */
export function imageTypeOf(bytes: Uint8Array): ImageType | null {
  const starts = (at: number, ...signature: number[]): boolean => signature.every((byte, i) => bytes[at + i] === byte);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  return starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50) ? 'image/webp' : null;
}

/** Ending of a photo's name in a book file. */
export const imageEnding: Readonly<Record<ImageType, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};
