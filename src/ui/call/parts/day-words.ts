/** A moment in words that tell its age: "today 18:20", "3 days ago", "12 Mar 2026 (259 days ago)". */
export function dayWords(atMs: number, nowMs: number = Date.now()): string {
  const at = new Date(atMs);
  const days = Math.round((startOfDay(nowMs) - startOfDay(atMs)) / 86_400_000);
  const clock = `${at.getHours()}:${String(at.getMinutes()).padStart(2, '0')}`;
  if (days <= 0) return `today ${clock}`;
  if (days === 1) return `yesterday ${clock}`;
  if (days < 15) return `${days} days ago`;
  return `${at.toLocaleDateString('en-US', { day: 'numeric', month: 'short', year: 'numeric' })} (${days} days ago)`;
}

const startOfDay = (ms: number): number => new Date(ms).setHours(0, 0, 0, 0);
