const lists = new WeakMap<object, Transferable[]>();

/** Marks buffers of an answer (or of a request) as handed over, not copied; returns the value itself. */
export function transferring<T extends object>(value: T, list: Transferable[]): T {
  lists.set(value, list);
  return value;
}

/** What `transferring` was told of a value; an empty list where nothing was. */
export const transferListOf = (value: unknown): Transferable[] =>
  typeof value === 'object' && value !== null ? (lists.get(value) ?? []) : [];
