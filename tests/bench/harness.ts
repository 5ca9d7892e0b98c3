/** Least and most of the times of one way of doing something, milliseconds. */
export interface Spread {
  readonly min: number;
  readonly max: number;
}

const WARM_UP = 2;

/**
 * Times several ways of doing the same thing in turns, so that all meet the same machine: two warm-up rounds, then `runs`
 * more. What they return is summed up and must be finite, so that no engine leaves the work out.
 */
export async function sideBySide<Name extends string>(
  runs: number,
  ways: Readonly<Record<Name, () => number | Promise<number>>>,
): Promise<Record<Name, Spread>> {
  const names = Object.keys(ways) as Name[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>;
  let sink = 0;
  for (let run = -WARM_UP; run < runs; run++) {
    for (const name of names) {
      const start = performance.now();
      const value = ways[name]();
      sink += typeof value === 'number' ? value : await value;
      if (run >= 0) times[name].push(performance.now() - start);
    }
  }
  if (!Number.isFinite(sink)) throw new Error('A benchmark made nothing.');
  return Object.fromEntries(
    names.map((name) => [name, { min: Math.min(...times[name]), max: Math.max(...times[name]) }]),
  ) as Record<Name, Spread>;
}

/** "12–15", whole milliseconds or tenths under 10. */
export const span = ({ min, max }: Spread): string => {
  const digits = min < 10 ? 1 : 0;
  return `${min.toFixed(digits)}–${max.toFixed(digits)}`;
};
