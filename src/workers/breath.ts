/** Lets what waits for this thread through; rejects where the work was given up meanwhile. */
export async function breath(signal: AbortSignal): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 0));
  signal.throwIfAborted();
}
