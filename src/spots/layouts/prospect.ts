import { type AnchorLoad, noLoad } from './anchor-load.ts';
import type { HaulFrame } from './haul-frame.ts';
import type { Hope } from './hope.ts';
import type { Podium } from './podium.ts';
import type { PullBase } from './pull-base.ts';
import { holdCounts } from './rank.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Refused } from './refused.ts';

/** True where a turned haul could still take a place with the hope of its field, at least so many lanes and a load. */
export function mayTakePlace(
  { frame }: { readonly frame: HaulFrame },
  podium: Podium,
  hope: Hope,
  base: PullBase,
  along: -1 | 1,
  lanes: number,
  load: AnchorLoad,
): boolean {
  const refused = hope.refused[along > 0 ? 1 : 0];
  // On level ground the factor counts for the verdict alone.
  const factor = holdCounts(frame.grade) ? load.holdFactor : 0;
  const { filled } = podium;
  return (
    refused.known(lanes, load.verdict, factor, filled) ??
    ask(refused, { frame, podium, hope, base, lanes, load, factor })
  );
}

interface Asked {
  readonly frame: HaulFrame;
  readonly podium: Podium;
  readonly hope: Hope;
  readonly base: PullBase;
  readonly lanes: number;
  readonly load: AnchorLoad;
  readonly factor: number;
}

function ask(refused: Refused, { frame, podium, hope, base, lanes, load, factor }: Asked): boolean {
  const places = { ...EVEN, base, choice: hope.choice, fieldM: hope.fieldM };
  const admits = (of: AnchorLoad): boolean =>
    podium.admits(rankKeyOf(frame, hope.choice, lanes, of, 'turned', hope.minutes), places);
  const open = admits(load);
  refused.add(lanes, load.verdict, factor, podium.filled, open);
  if (!open && !admits(NO_LOAD)) refused.fromLanes = lanes;
  return open;
}

const NO_LOAD = noLoad();
/** Spots with nothing to check: what a tie could at best come to. */
const EVEN = { anchor: { spot: null }, turn: null };
