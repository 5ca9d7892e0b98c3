import type { StudyArrival } from '../../study/index.ts';

/** People there from a minute on, and who came. */
export interface PeopleStep {
  readonly atMin: number;
  readonly there: number;
  readonly units: readonly string[];
  /** Another district's have come too: the line is dashed from here. */
  readonly aid: boolean;
}

/** The step line of who is there, earliest first; units of one minute are one step. */
export function peopleSteps(arriving: readonly StudyArrival[]): PeopleStep[] {
  const steps: PeopleStep[] = [];
  let there = 0;
  let aid = false;
  for (const { atMin, people, unit, tier } of [...arriving].sort((a, b) => a.atMin - b.atMin)) {
    there += people;
    aid ||= tier === 'mutual aid';
    const last = steps.at(-1);
    if (last?.atMin === atMin) steps[steps.length - 1] = { ...last, there, aid, units: [...last.units, unit] };
    else steps.push({ atMin, there, units: [unit], aid });
  }
  return steps;
}
