/** When, by a device's clock that never runs backwards: milliseconds since 1970 and a counter within them. */
export type Time = readonly [ms: number, counter: number];

/**
 * Table, id of the record, field, value, and the ids of the updates whose values of that field it replaces. An undo or redo adds
 * the update whose value it brings back: a later undo then knows whose the value is.
 */
export type Op = readonly [
  table: string,
  id: string,
  field: string,
  value: unknown,
  over: readonly string[],
  standsFor?: string,
];

/**
 * One command of one person. It never changes: on disk, in a file and on a wire it is the same. `actor` is one device's copy of
 * the book, `n` counts its updates from 1.
 */
export interface Update {
  /** Version of the schema that its operations speak. */
  readonly v: number;
  readonly actor: string;
  readonly n: number;
  readonly t: Time;
  readonly who: string;
  readonly device: string;
  /** What was done, in a few words, for history and undo. */
  readonly label: string;
  readonly ops: readonly Op[];
  /** The update whose effect this one takes back, or brings back. */
  readonly undoes?: string;
  readonly redoes?: string;
  /** What its writer had seen, in updates that delete: whoever changed the record without knowing is told. */
  readonly after?: readonly (readonly [actor: string, n: number])[];
}

/** The id of an update, and of every write in it: "actor:n". */
export const updateId = ({ actor, n }: Pick<Update, 'actor' | 'n'>): string => `${actor}:${n}`;

/** Actor and number of an update's id. */
export function partsOfId(id: string): { actor: string; n: number } {
  const colon = id.lastIndexOf(':');
  return { actor: id.slice(0, colon), n: Number(id.slice(colon + 1)) };
}
