import { formatLength, formatLengthFigure, type UnitSystem } from '../../units/index.ts';
import type { Study, StudyArrival } from '../study.ts';

const tiers = ['first arriving', 'first alarm', 'mutual aid'] as const;

/** Main rope that the first layout needs against the longest there; what is short, and whose arrival mends it. */
export function ropeWords({ layouts, arriving }: Omit<Study, 'sentence'>, units: UnitSystem): string {
  const { fits, ropeM, stages } = layouts[0]!;
  const fit = [fits.firstArriving, fits.firstAlarm, fits.mutualAid];
  const tier = fit.indexOf('yes');
  const there = arriving.filter((arrival) => tiers.indexOf(arrival.tier) <= (tier < 0 ? 2 : tier));
  const need = `${formatLength(ropeM.main, units, 'up')} of main, ${formatLengthFigure(longest(there), units, 'down')} there`;
  if (tier >= 0) {
    const [mend] = fits.short;
    return tier === 2 && mend?.unit ? `${need} with ${mend.unit} at ${mend.atMin} min.` : `${need}.`;
  }
  const short = fits.short.map(({ line, byM }) => `${line} ${formatLength(byM, units, 'up')}`).join(', ');
  const stage = stages?.[0]
    ? ` In ${stages[0].count} stages with ropes of ${formatLength(stages[0].ropeLengthM, units, 'down')}.`
    : '';
  const joined = fits.mutualAid === 'joined' ? ', reaches only joined' : '';
  return `${need}. Rope short: ${short}${joined}.${stage}`;
}

const longest = (arriving: readonly StudyArrival[]): number =>
  arriving.flatMap(({ ropesM }) => ropesM).reduce((most, ropeM) => Math.max(most, ropeM), 0);
