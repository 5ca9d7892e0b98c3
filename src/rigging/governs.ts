import type { ForceCheck, Verdict } from './force-check.ts';

/** What decides a set of checks: the one with the least factor for what it needs, and the verdict over all of them. */
export interface Governing {
  readonly check: ForceCheck | null;
  readonly verdict: Verdict;
  /** Least factor against sliding; null where nothing could slide. */
  readonly leastHoldFactor: number | null;
}

const worst: readonly Verdict[] = ['yes', 'judge on site', 'no'];

export function governs(checks: readonly ForceCheck[]): Governing {
  let check: ForceCheck | null = null;
  let verdict: Verdict = 'yes';
  let leastHoldFactor: number | null = null;
  for (const one of checks) {
    if (worst.indexOf(one.ok) > worst.indexOf(verdict)) verdict = one.ok;
    if (one.kind === 'hold' && one.factor !== null)
      leastHoldFactor = Math.min(leastHoldFactor ?? Number.POSITIVE_INFINITY, one.factor);
    if (!check || share(one) < share(check)) check = one;
  }
  return { check, verdict, leastHoldFactor };
}

/** Factor at hand for the factor needed; what nobody can compute comes first when it is a no, last when it is to be judged. */
function share({ factor, required, ok }: ForceCheck): number {
  if (factor !== null && required !== null) return factor / required;
  return ok === 'no' ? 0 : Number.POSITIVE_INFINITY;
}
