import { isBrought } from '../../book/index.ts';
import type { Meta } from './book-disk.ts';

/** Whether a copy of the book is off the device, for the reminder. */
export interface CopyState {
  readonly state: 'empty' | 'none' | 'behind' | 'current';
  /** Updates that no copy off the device holds, but for what came with the district's files. */
  readonly changes: number;
  /** Whole days since the last copy left, by this device's clock; null where none did. */
  readonly days: number | null;
  /** Remind now: there is something to lose. */
  readonly remind: boolean;
}

/** Remind from so many changes or so many days on; common practice, no source. */
const CHANGES = 20;
const DAYS = 7;
const DAY_MS = 86_400_000;

/** How the last copy that left stands against the book, at `nowMs`. A clock that was set back counts as today. */
export function copyState({ vector, copyLeft }: Pick<Meta, 'vector' | 'copyLeft'>, nowMs: number): CopyState {
  const copied = new Map(copyLeft?.heads ?? []);
  let changes = 0;
  for (const [actor, { upTo, beyond }] of vector)
    if (!isBrought(actor)) changes += upTo - Math.min(upTo, copied.get(actor) ?? 0) + beyond.size;
  const days = copyLeft && Math.max(0, Math.floor((nowMs - copyLeft.atMs) / DAY_MS));
  if (changes === 0) return { state: copyLeft ? 'current' : 'empty', changes, days, remind: false };
  if (!copyLeft) return { state: 'none', changes, days: null, remind: true };
  return { state: 'behind', changes, days, remind: changes >= CHANGES || days! >= DAYS };
}
