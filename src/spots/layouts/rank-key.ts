import type { Verdict } from '../../rigging/index.ts';
import type { AnchorLoad } from './anchor-load.ts';
import type { SystemChoice } from './choose-system.ts';
import type { HaulFrame } from './haul-frame.ts';
import type { RankKey } from './rank.ts';

/** By what a load says: met, to judge, unmet. */
export const VERDICTS: readonly Verdict[] = ['yes', 'judge on site', 'no'];

/** What an arrangement ranks by. */
export function rankKeyOf(
  { grade, mostResets }: Pick<HaulFrame, 'grade'> & { readonly mostResets: number },
  choice: SystemChoice,
  lanes: number,
  load: AnchorLoad,
  kind: 'straight' | 'turned',
  minutes: number,
): RankKey {
  return {
    verdict: VERDICTS[load.verdict],
    practical: choice.resets <= mostResets,
    kit: choice.kit,
    crewByAlarm: choice.crewByAlarm,
    advantage: choice.advantage,
    resets: choice.resets,
    lanes,
    grade,
    leastHoldFactor: Number.isFinite(load.holdFactor) ? load.holdFactor : null,
    straight: kind === 'straight',
    liftedByHandM: choice.liftedByHandM,
    minutes,
  };
}
