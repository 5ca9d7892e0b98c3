const two = (value: number): string => String(value).padStart(2, '0');

/** A moment by this device's clock: "2026-10-14 09:05". */
export function dayTime(atMs: number): string {
  const date = new Date(atMs);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
