import { UserError } from '../../units/index.ts';

/** The largest file of places that is read, bytes: a district's crash records of ten years are a few megabytes. */
export const LARGEST_FILE = 64e6;

/**
 * Text of a file's bytes: UTF-8 or UTF-16 by its byte order mark, else UTF-8, else Windows-1252, which older spreadsheets write;
 * `guessed` is true for the last. Throws a `UserError` where the file is too large.
 */
export function decodeText(bytes: Uint8Array, file: string): { text: string; guessed: boolean } {
  if (bytes.length > LARGEST_FILE) {
    throw new UserError(
      'file-large',
      `${file} has ${bytes.length} bytes, over the ${LARGEST_FILE} that are read; split it or leave columns out.`,
    );
  }
  if (bytes[0] === 0xff && bytes[1] === 0xfe)
    return { text: new TextDecoder('utf-16le').decode(bytes), guessed: false };
  if (bytes[0] === 0xfe && bytes[1] === 0xff)
    return { text: new TextDecoder('utf-16be').decode(bytes), guessed: false };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), guessed: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), guessed: true };
  }
}
