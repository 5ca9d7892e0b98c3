import type { AnchorLoad } from './anchor-load.ts';
import type { Bar } from './bar.ts';
import type { Hope } from './hope.ts';
import type { Podium } from './podium.ts';
import { VERDICTS } from './rank-key.ts';
import type { Search } from './search.ts';

/** True where a turned haul could still take a place with the hope of its field, at least so many lanes and a load. */
export const mayTakePlace = (
  search: Search,
  along: -1 | 1,
  hope: Hope,
  lanes: number,
  { verdict, holdFactor }: AnchorLoad,
): boolean => {
  const bar = hope.bars[along > 0 ? 1 : 0];
  return holdFactor >= bar.atLeast(lanes, verdict) && holdFactor >= leastFactor(search, along, hope, lanes, verdict);
};

/** Least hold factor with which it could: -Infinity any, Infinity none. */
export function leastFactor(
  { podiums }: Search,
  along: -1 | 1,
  hope: Hope,
  lanes: number,
  verdict: AnchorLoad['verdict'],
): number {
  const bar = hope.bars[along > 0 ? 1 : 0];
  const podium = podiums.turned[along];
  const known = bar.least(lanes, verdict, podium.filled);
  if (known !== null) return known;
  const least = ask(podium, bar, hope, lanes, verdict);
  // Where a worse verdict is out whatever it holds, the best may be too, and with it every one on more lanes.
  if (least === Number.POSITIVE_INFINITY && verdict > 0) ask(podium, bar, hope, lanes, 0);
  return least;
}

function ask(podium: Podium, bar: Bar, { key, level }: Hope, lanes: number, verdict: AnchorLoad['verdict']): number {
  key.lanes = lanes;
  key.verdict = VERDICTS[verdict];
  const least = podium.leastFactor(key, level);
  bar.raise(lanes, verdict, least, podium.filled);
  return least;
}
