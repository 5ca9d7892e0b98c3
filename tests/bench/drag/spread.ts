/** Smallest, middle, 95th hundredth and largest of a list of milliseconds. */
export function spread(ms: readonly number[]): string {
  if (ms.length === 0) return 'none';
  const sorted = [...ms].sort((a, b) => a - b);
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(0);
  const within = (100 * sorted.filter((one) => one <= 100).length) / sorted.length;
  return `min ${at(0)}, p50 ${at(0.5)}, p95 ${at(0.95)}, max ${at(1)} ms of ${ms.length}; ${within.toFixed(0)} % within 100 ms`;
}
