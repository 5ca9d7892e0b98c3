import type { RoadTraits } from '../../road/index.ts';
import { chooseSystem, type SystemChoice } from './choose-system.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Means } from './means.ts';
import { minutesOf } from './minutes-of.ts';
import { LEAST_OTHERS } from './people-there.ts';
import type { PullBase } from './pull-base.ts';
import { Refused } from './refused.ts';

/** What a turned haul can at most come to: no later exact figure of it ranks before this. */
export interface Hope {
  readonly choice: SystemChoice;
  readonly minutes: number;
  /** Shortest field that it stands for, metres. */
  readonly fieldM: number;
  /** What took no place with it, against the drawing of the road and along it. */
  readonly refused: readonly [Refused, Refused];
}

/** The hope of a field, by its metre, with so many people beside the haul team (else the least); null where no throw is long enough. */
export type HopeOf = (
  base: PullBase,
  fieldM: number,
  belayRunM: number,
  apparatusAtMin: number,
  by: 'rank' | 'resets',
  othersCount?: number,
) => Hope | null;

const BINS_PER_M = 1;

/**
 * Remembers the best that fields of each metre can come to: the throw of the longer end, the rope of the shorter, the
 * people that it is asked for, the most room to walk. A search compares it with what it holds before it works anything out.
 */
export function hopes(means: Means, traits: RoadTraits, rigRopesM: (atMin: number) => readonly number[]): HopeOf {
  const known = new Map<PullBase, Row[]>();
  let last: Row | null = null;
  return (base, fieldM, belayRunM, apparatusAtMin, by, othersCount = LEAST_OTHERS) => {
    const bin = Math.floor(fieldM * BINS_PER_M);
    if (last === null || !isRow(last, base, belayRunM, apparatusAtMin, by, othersCount)) {
      const rows = known.get(base) ?? [];
      known.set(base, rows);
      last = rows.find((row) => isRow(row, base, belayRunM, apparatusAtMin, by, othersCount)) ?? null;
      if (last === null) {
        last = { base, belayRunM, apparatusAtMin, by, othersCount, bins: [] };
        rows.push(last);
      }
    }
    const { bins } = last;
    let hope = bins[bin];
    if (hope === undefined) {
      hope = hopeOfBin(base, bin / BINS_PER_M, belayRunM, apparatusAtMin, by, othersCount);
      bins[bin] = hope;
    }
    return hope;
  };

  function hopeOfBin(
    base: PullBase,
    fieldM: number,
    belayRunM: number,
    apparatusAtMin: number,
    by: 'rank' | 'resets',
    othersCount: number,
  ): Hope | null {
    const choice = chooseSystem(
      {
        ...{ base, fieldM: fieldM + 1 / BINS_PER_M, ropeFieldM: fieldM, belayRunM, handTurns: 0 },
        ...{ othersCount, rigRopesM: rigRopesM(apparatusAtMin) },
      },
      means,
      by,
    );
    if (choice === null) return null;
    const room = { lanesTaken: 0, roomM: LAYOUT_LIMITS.roomMostM };
    const { total } = minutesOf({ kind: 'turned', base, choice, apparatusAtMin, ...room }, means, traits);
    const never = Number.POSITIVE_INFINITY;
    return { choice, minutes: total ?? never, fieldM, refused: [new Refused(), new Refused()] };
  }
}

interface Row {
  readonly base: PullBase;
  readonly belayRunM: number;
  readonly apparatusAtMin: number;
  readonly by: 'rank' | 'resets';
  readonly othersCount: number;
  readonly bins: (Hope | null | undefined)[];
}

const isRow = (
  row: Row,
  base: PullBase,
  belayRunM: number,
  apparatusAtMin: number,
  by: 'rank' | 'resets',
  othersCount: number,
): boolean =>
  row.base === base &&
  row.by === by &&
  row.othersCount === othersCount &&
  row.belayRunM === belayRunM &&
  row.apparatusAtMin === apparatusAtMin;
