/**
 * Runs of indices in 0 … count − 1 for which `holds`: first and last index of each, both included.
 * Runs no more than `gap` apart are one.
 */
export function runsWhere(count: number, holds: (i: number) => boolean, gap = 0): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < count; i++) {
    if (!holds(i)) continue;
    const from = i;
    while (i + 1 < count && holds(i + 1)) i++;
    const last = runs.at(-1);
    if (last && from - last.to - 1 <= gap) last.to = i;
    else runs.push({ from, to: i });
  }
  return runs;
}
