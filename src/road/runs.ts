/** Runs of indices in 0 … count − 1 for which `holds`: first and last index of each, both included. */
export function runsWhere(count: number, holds: (i: number) => boolean): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < count; i++) {
    if (!holds(i)) continue;
    const from = i;
    while (i + 1 < count && holds(i + 1)) i++;
    runs.push({ from, to: i });
  }
  return runs;
}
