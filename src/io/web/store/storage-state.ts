/** What the browser says of the storage of this origin. */
export interface StorageState {
  /** The browser promises not to clear it under pressure; null where it cannot say. */
  readonly persisted: boolean | null;
  /** Bytes in use; null where it cannot say. What is free it does not tell reliably, so it is not asked. */
  readonly usedBytes: number | null;
}

/** Asks the browser how it keeps this origin's storage. Never rejects. */
export async function storageState(): Promise<StorageState> {
  const { storage } = navigator as { storage?: StorageManager };
  const persisted = await storage?.persisted?.().catch(() => null);
  const estimate = await storage?.estimate?.().catch(() => null);
  return { persisted: persisted ?? null, usedBytes: estimate?.usage ?? null };
}

/**
 * Asks the browser to promise that it keeps this origin's storage; some ask the person. The right time is just after the first site
 * was saved, on a tap. False is an answer: the screen then says that the browser may clear the book, and to keep a copy elsewhere.
 */
export async function askToPersist(): Promise<boolean> {
  const { storage } = navigator as { storage?: StorageManager };
  return (await storage?.persist?.().catch(() => false)) ?? false;
}
