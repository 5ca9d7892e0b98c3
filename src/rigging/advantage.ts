/** Haul systems by name, in the order in which a crew prefers them: simplest first, 3:1 before 2:1 which asks many hands. */
export const advantageNames = ['3:1', '5:1', '2:1', '6:1', '9:1'] as const;
export type AdvantageName = (typeof advantageNames)[number];

/**
 * Stages of each system, the stage on the load first. A simple system is one stage; a compound one is a system pulling on
 * another. The 6:1 is a 2:1 on the hauling end of a 3:1: of the two ways to build it the one with the shorter throw.
 */
const stages: Readonly<Record<AdvantageName, readonly number[]>> = {
  '2:1': [2],
  '3:1': [3],
  '5:1': [5],
  '6:1': [3, 2],
  '9:1': [3, 3],
};

export const stagesOf = (name: AdvantageName): readonly number[] => stages[name];

export const isCompound = (name: AdvantageName): boolean => stages[name].length > 1;

/** Advantage without friction: what the rope and the walk are counted by. */
export const idealAdvantage = (name: AdvantageName): number => stages[name].reduce((product, n) => product * n, 1);

/**
 * Advantage with the share `efficiency` of the tension that a sheave passes on: 1 + η + … + η^(n−1) for a simple n:1, the
 * product of its stages for a compound one, and η once more for each turn of the hauling line [source: derived].
 *
 * ```
 *  3:1   anchor ●──────────────╮ η          hand: 1
 *               ╰─ η² … load ◄─◦◄── grab    load: 1 + η + η²
 * ```
 */
export function actualAdvantage(name: AdvantageName, efficiency: number, turns = 0): number {
  let product = efficiency ** turns;
  for (const n of stages[name]) {
    let stage = 0;
    for (let i = 0; i < n; i++) stage += efficiency ** i;
    product *= stage;
  }
  return product;
}
