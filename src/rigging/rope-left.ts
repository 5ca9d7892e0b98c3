/**
 * The longest rope that can be left over when each need, metres, gets one rope of its own: what a haul line, or a main line
 * with its system built in, may be cut to. Null where the needs themselves are not met or no rope is left.
 */
export function ropeLeft(needsM: readonly number[], ropesM: readonly number[]): number | null {
  const needs = [...needsM].sort((a, b) => b - a);
  const ropes = [...ropesM].sort((a, b) => b - a);
  for (let left = 0; left < ropes.length; left++) {
    const others = ropes.filter((_, i) => i !== left);
    if (needs.every((needM, i) => i < others.length && others[i]! + 1e-9 >= needM)) return ropes[left]!;
  }
  return null;
}
