import { noLoad } from './anchor-load.ts';
import { Bar } from './bar.ts';
import { chooseSystem } from './choose-system.ts';
import type { HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Means } from './means.ts';
import { minutesOf } from './minutes-of.ts';
import { LEAST_OTHERS } from './people-there.ts';
import { type Level, levelOf } from './podium.ts';
import type { PullBase } from './pull-base.ts';
import type { RankKey } from './rank.ts';
import { rankKeyOf } from './rank-key.ts';

/** What a turned haul can at most come to: no later exact figure of it ranks before this. */
export interface Hope {
  /** What it ranks by; lanes and verdict are those of whoever asks, the hold is none's. */
  readonly key: RankKey & { lanes: number; verdict: RankKey['verdict'] };
  /** That of the shortest field that it stands for, on spots with nothing to check. */
  readonly level: Level;
  /** What it takes to find a place with it, against the drawing of the road and along it. */
  readonly bars: readonly [Bar, Bar];
}

/** With the system that ranks first, and with that of fewest resets; null where no throw is long enough. */
export type Hopes = Readonly<Record<'rank' | 'resets', Hope | null>>;

/**
 * The hopes of fields, by their metre, on one base with so long a belay, the apparatus there at a time, minutes, and so many people
 * beside the haul team (else the least).
 */
export type HopesOf = (base: PullBase, belayRunM: number, apparatusAtMin: number, othersCount?: number) => HopeRow;

/** Remembers the rows of a search. */
export function hopeRows(means: Means, frame: HaulFrame, rigRopesM: (atMin: number) => readonly number[]): HopesOf {
  const known = new Map<PullBase, HopeRow[]>();
  let last: HopeRow | null = null;
  return (base, belayRunM, apparatusAtMin, othersCount = LEAST_OTHERS) => {
    const is = (row: HopeRow): boolean =>
      row.base === base &&
      row.belayRunM === belayRunM &&
      row.apparatusAtMin === apparatusAtMin &&
      row.othersCount === othersCount;
    if (last !== null && is(last)) return last;
    const rows = known.get(base) ?? [];
    known.set(base, rows);
    last = rows.find(is) ?? null;
    if (last !== null) return last;
    last = new HopeRow(base, belayRunM, apparatusAtMin, othersCount, means, frame, rigRopesM(apparatusAtMin));
    rows.push(last);
    return last;
  };
}

/**
 * Remembers the best that fields of each metre can come to: the throw of the longer end, the rope of the shorter, the
 * people that it is asked for, the most room to walk. A search compares it with what it holds before it works anything out.
 */
class HopeRow {
  readonly #byMetre: (Hopes | undefined)[] = [];

  constructor(
    readonly base: PullBase,
    readonly belayRunM: number,
    readonly apparatusAtMin: number,
    readonly othersCount: number,
    readonly means: Means,
    readonly frame: HaulFrame,
    readonly rigRopesM: readonly number[],
  ) {}

  of(fieldM: number): Hopes {
    const metre = Math.floor(fieldM);
    let hopes = this.#byMetre[metre];
    if (hopes === undefined) {
      hopes = { rank: this.#hope(metre, 'rank'), resets: this.#hope(metre, 'resets') };
      this.#byMetre[metre] = hopes;
    }
    return hopes;
  }

  #hope(metre: number, by: 'rank' | 'resets'): Hope | null {
    const { base, belayRunM, apparatusAtMin, othersCount, means, frame, rigRopesM } = this;
    const field = { fieldM: metre + 1, ropeFieldM: metre };
    const choice = chooseSystem({ base, ...field, belayRunM, handTurns: 0, othersCount, rigRopesM }, means, by);
    if (choice === null) return null;
    // A metre less of field takes at most a metre off the throw, and a shorter throw may need fewer re-grips.
    const shorter = { ...choice, throwM: Math.max(0, choice.throwM - 1) };
    const timed = { kind: 'turned', base, choice: shorter, apparatusAtMin, lanesTaken: 0 } as const;
    const { total } = minutesOf({ ...timed, roomM: LAYOUT_LIMITS.roomMostM }, means, frame.ground.traits);
    return {
      key: rankKeyOf(frame, choice, 0, noLoad(), 'turned', total ?? Number.POSITIVE_INFINITY),
      level: levelOf({ ...EVEN, base, choice, fieldM: metre }),
      bars: [new Bar(), new Bar()],
    };
  }
}

/** Spots with nothing to check: what a tie could at best come to. */
const EVEN = { anchor: { spot: null }, turn: null };
