import { type Reason, ropeReasons, tensionReasons } from '../../rigging/index.ts';
import type { Layout } from './layout-types.ts';
import type { Means } from './means.ts';

/** Every number of a layout that follows from others, with formula, inputs and source. */
export function layoutReasons(layout: Omit<Layout, 'rank' | 'why' | 'reasons'>, means: Means): Reason[] {
  const { ground, run, haul } = layout;
  return [
    ...tensionReasons(ground, run, means.conditions, means.rates, haul),
    ...ropeReasons(ground, run, means.rates, haul),
  ];
}
