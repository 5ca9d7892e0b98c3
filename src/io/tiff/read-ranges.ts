import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';

/** A stretch of a file, bytes. */
export interface ByteRange {
  readonly offset: number;
  readonly length: number;
}

/** Ranges nearer to each other than this are read as one: a request costs about as much as these bytes (a judgement). */
export const LARGEST_GAP = 16_384;
/** No joined read grows past this, bytes. */
export const LARGEST_READ = 4 * 1024 * 1024;

/** Ranges that one read brings, in ascending order, as places in the list that was handed in. */
export interface JoinedRange extends ByteRange {
  readonly members: readonly number[];
}

/** Joins neighbouring ranges into few reads that touch little else. */
export function joinRanges(ranges: readonly ByteRange[]): JoinedRange[] {
  const order = ranges.map((_, i) => i).sort((a, b) => ranges[a].offset - ranges[b].offset);
  const joined: { offset: number; length: number; members: number[] }[] = [];
  for (const i of order) {
    const { offset, length } = ranges[i];
    const last = joined.at(-1);
    const end = offset + length;
    if (last && offset - (last.offset + last.length) <= LARGEST_GAP && end - last.offset <= LARGEST_READ) {
      last.length = Math.max(last.length, end - last.offset);
      last.members.push(i);
    } else {
      joined.push({ offset, length, members: [i] });
    }
  }
  return joined;
}

/** Reads one joined range and hands out its members' bytes, each in a buffer of its own (so that it can be transferred). */
export async function readJoined(
  source: ByteSource,
  joined: JoinedRange,
  ranges: readonly ByteRange[],
  signal: AbortSignal,
): Promise<ArrayBuffer[]> {
  const bytes = await source.read(joined.offset, joined.length, signal);
  if (bytes.byteLength < joined.length) {
    throw cutOff(source.name, joined.offset + bytes.byteLength, joined.offset + joined.length);
  }
  if (joined.members.length === 1 && bytes.byteLength === joined.length) return [bytes];
  return joined.members.map((i) => {
    const start = ranges[i].offset - joined.offset;
    return bytes.slice(start, start + ranges[i].length);
  });
}

/** The refusal of a file that ends too early. */
export const cutOff = (source: string, ends: number, promised: number): UserError =>
  new UserError(
    'truncated',
    `${source} ends at byte ${ends} where its directory promises ${promised}: it is cut off; copy or download it again.`,
  );
