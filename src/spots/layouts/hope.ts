import type { RoadTraits } from '../../road/index.ts';
import { chooseSystem, type SystemChoice } from './choose-system.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Means } from './means.ts';
import { minutesOf } from './minutes-of.ts';
import { LEAST_OTHERS } from './people-there.ts';
import type { PullBase } from './pull-base.ts';

/** What a turned haul can at most come to: no later exact figure of it ranks before this. */
export interface Hope {
  readonly choice: SystemChoice;
  readonly minutes: number;
}

/** The hope of a field, by its half metre; null where no throw in it is long enough. */
export type HopeOf = (
  base: PullBase,
  fieldM: number,
  belayRunM: number,
  apparatusAtMin: number,
  by: 'rank' | 'resets',
) => Hope | null;

const BINS_PER_M = 2;

/**
 * Remembers the best that fields of each half metre can come to: the throw of the longer end, the rope of the shorter, the
 * fewest people, the most room to walk. A search compares it with what it holds before it works anything out.
 */
export function hopes(means: Means, traits: RoadTraits, rigRopesM: (atMin: number) => readonly number[]): HopeOf {
  const known = new Map<PullBase, Map<string, (Hope | null | undefined)[]>>();
  return (base, fieldM, belayRunM, apparatusAtMin, by) => {
    let rows = known.get(base);
    if (rows === undefined) {
      rows = new Map();
      known.set(base, rows);
    }
    const key = `${by} ${belayRunM} ${apparatusAtMin}`;
    let row = rows.get(key);
    if (row === undefined) {
      row = [];
      rows.set(key, row);
    }
    const bin = Math.floor(fieldM * BINS_PER_M);
    let hope = row[bin];
    if (hope === undefined) {
      hope = hopeOfBin(base, bin / BINS_PER_M, belayRunM, apparatusAtMin, by);
      row[bin] = hope;
    }
    return hope;
  };

  function hopeOfBin(
    base: PullBase,
    fieldM: number,
    belayRunM: number,
    apparatusAtMin: number,
    by: 'rank' | 'resets',
  ): Hope | null {
    const choice = chooseSystem(
      {
        ...{ base, fieldM: fieldM + 1 / BINS_PER_M, ropeFieldM: fieldM, belayRunM, handTurns: 0 },
        ...{ othersCount: LEAST_OTHERS, rigRopesM: rigRopesM(apparatusAtMin) },
      },
      means,
      by,
    );
    if (choice === null) return null;
    const room = { lanesTaken: 0, roomM: LAYOUT_LIMITS.roomMostM };
    const { total } = minutesOf({ kind: 'turned', base, choice, apparatusAtMin, ...room }, means, traits);
    return { choice, minutes: total ?? Number.POSITIVE_INFINITY };
  }
}
