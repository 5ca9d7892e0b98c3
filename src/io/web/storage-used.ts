/** How much of this device's storage the page uses, bytes; `lasting` where the browser promised not to clear it by itself. */
export interface StorageUsed {
  readonly usedBytes: number;
  readonly quotaBytes: number | null;
  readonly lasting: boolean;
}

/** Asks the browser how much room is used; a browser that does not tell gives zero used of an unknown quota. */
export async function storageUsed(): Promise<StorageUsed> {
  const { usage, quota } = (await navigator.storage?.estimate?.()) ?? {};
  return {
    usedBytes: usage ?? 0,
    quotaBytes: quota ?? null,
    lasting: (await navigator.storage?.persisted?.()) ?? false,
  };
}

/** Asks the browser not to clear the page's storage by itself; to be called after something that a person did. True where it agrees. */
export const askToLast = async (): Promise<boolean> => (await navigator.storage?.persist?.()) ?? false;
