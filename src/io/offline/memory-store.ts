import type { KeptEntry, KeptStore } from './kept-store.ts';

/** A store that lasts as long as the program runs, for tests. */
export function memoryStore(now: () => number = () => 0): KeptStore & { readonly entries: Map<string, KeptEntry> } {
  const entries = new Map<string, KeptEntry>();
  return {
    entries,
    read: async (key) => entries.get(key) ?? null,
    write: async (key, bytes, version = null) => {
      entries.set(key, { bytes: new Uint8Array(bytes).slice().buffer, atMs: now(), version });
    },
    keys: async (prefix) => [...entries.keys()].filter((key) => key.startsWith(prefix)),
    remove: async (key) => void entries.delete(key),
  };
}
