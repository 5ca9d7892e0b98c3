/** Takes a plain book of one version to the next; total, and without looking at anything but the book. */
export type Migration = (book: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** `migrations[i]` takes version i + 1 to version i + 2. Version 1 is the first. */
export const migrations: readonly Migration[] = [];
