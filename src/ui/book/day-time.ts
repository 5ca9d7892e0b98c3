const two = (value: number): string => String(value).padStart(2, '0');

/** Before this no edit was made: what a file brought carries no time. */
const FIRST_MS = Date.UTC(2020, 0, 1);

/** A moment by this device's clock: "2026-10-14 09:05". */
export function dayTime(atMs: number): string {
  if (atMs < FIRST_MS) return 'no time told';
  const date = new Date(atMs);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
