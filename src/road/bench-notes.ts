import { toDegrees } from '../units/index.ts';
import type { Bench, BenchNote, BenchSide } from './bench-types.ts';
import { KIND } from './edge-kind.ts';
import { runsWhere } from './runs.ts';
import { LOOSE_ABOVE } from './slope-above.ts';
import { UNDER } from './structures.ts';

/** A line drawn farther than this from the road found is warned of, metres. */
const SHIFT_M = 4;
/** An edge that moves more than this between stations jumps, metres. */
const JUMP_M = 2;
/** A shoulder is soft where 12 % is passed this far inside the edge, metres. */
const SOFT_M = 1.2;
/** A turn from cut to fill within this many stations is one change of the side. */
const CHANGE_STATIONS = 10;
/** Stretches no more than this many stations apart are told as one. */
const GAP = 5;

type Draft = Omit<BenchNote, 'fromM' | 'toM'> & { from: number; to: number };

/**
 * What a study must say about a bench. Values by code: `line-shift` largest shift from the line; `bank` its deepest fall
 * and slope in degrees; `bank-at-edge` its height;
 * `drop-behind-bank` the fall behind it; `ditch` lip and toe as offsets; `soft-shoulder` its greatest width; `track-leaves` the edge's
 * distance from the line before and after the jump; `slope-above` angle in degrees and height; `two-benches` the other
 * one's offset from the line and its height over the road. The others carry none.
 */
export function benchNotes(
  bench: Omit<Bench, 'notes'>,
  second: { offsetM: Float64Array; riseM: Float64Array },
): BenchNote[] {
  const { count, under, shiftM, heightM, left, right, firstStationM } = bench;
  const drafts: Draft[] = [];
  const road = (
    code: Draft['code'],
    holds: (i: number) => boolean,
    values: (from: number, to: number) => number[],
  ): void => {
    for (const { from, to } of runsWhere(count, holds))
      drafts.push({ code, side: 0, from, to, values: values(from, to) });
  };
  road(
    'structure',
    (i) => under[i] === UNDER.structure,
    () => [],
  );
  road(
    'culvert',
    (i) => under[i] === UNDER.trench,
    () => [],
  );
  road(
    'no-ground',
    (i) => Number.isNaN(heightM[i]) && under[i] !== UNDER.structure,
    () => [],
  );
  road(
    'line-shift',
    (i) => Math.abs(shiftM[i]) > SHIFT_M,
    (from, to) => [largest(shiftM, from, to)],
  );
  road(
    'two-benches',
    (i) => !Number.isNaN(second.offsetM[i]),
    (from) => [second.offsetM[from], second.riseM[from]],
  );
  road(
    'through-fill',
    (i) => left.kind[i] === KIND.drop && right.kind[i] === KIND.drop,
    () => [],
  );
  drafts.push(...sideNotes(left, -1, count), ...sideNotes(right, 1, count));
  return drafts.map(({ from, to, ...note }) => ({ ...note, fromM: firstStationM + from, toM: firstStationM + to }));
}

function sideNotes(own: BenchSide, side: -1 | 1, count: number): Draft[] {
  const { kind, edgeOffsetM, firmOffsetM, lipOffsetM, fallM, outerSlope, bankM, above } = own;
  const drafts: Draft[] = [];
  const add = (
    code: Draft['code'],
    holds: (i: number) => boolean,
    values: (from: number, to: number) => number[],
  ): void => {
    for (const { from, to } of runsWhere(count, holds, GAP)) {
      drafts.push({ code, side, from, to, values: values(from, to) });
    }
  };
  add(
    'bank',
    (i) => kind[i] === KIND.bank,
    (from, to) => [largest(fallM, from, to), toDegrees(Math.atan(Math.abs(largest(outerSlope, from, to))))],
  );
  add(
    'bank-at-edge',
    (i) => kind[i] === KIND.drop && !Number.isNaN(bankM[i]),
    (from, to) => [largest(bankM, from, to)],
  );
  add(
    'drop-behind-bank',
    (i) => kind[i] === KIND.rise && fallM[i] > 0,
    (from, to) => [largest(fallM, from, to)],
  );
  add(
    'ditch',
    (i) => !Number.isNaN(lipOffsetM[i]),
    (from) => [lipOffsetM[from], edgeOffsetM[from]],
  );
  add(
    'soft-shoulder',
    (i) => Math.abs(edgeOffsetM[i] - firmOffsetM[i]) > SOFT_M,
    (from, to) => [
      largest(
        edgeOffsetM.map((edge, i) => edge - firmOffsetM[i]),
        from,
        to,
      ),
    ],
  );
  add(
    'slope-above',
    (i) => (above[i]?.angleDeg ?? 0) > LOOSE_ABOVE.angleDeg && above[i]!.heightM > LOOSE_ABOVE.heightM,
    (from, to) => {
      const there = above.slice(from, to + 1).filter((slope) => slope !== null);
      const worst = there.reduce((a, b) => (b.angleDeg > a.angleDeg ? b : a));
      return [worst.angleDeg, worst.heightM];
    },
  );
  for (let i = 1; i < count; i++) {
    const [before, after] = [edgeOffsetM[i - 1], edgeOffsetM[i]];
    const falls = kind[i - 1] !== KIND.rise && kind[i] !== KIND.rise;
    if (falls && (kind[i - 1] === KIND.drop || kind[i] === KIND.drop) && Math.abs(after - before) > JUMP_M) {
      drafts.push({ code: 'track-leaves', side, from: i - 1, to: i, values: [Math.abs(before), Math.abs(after)] });
    }
  }
  return [...drafts, ...sideChanges(kind, side, count)];
}

/** Places where a side that falls turns into one that rises, or the other way round. */
function sideChanges(kind: Uint8Array, side: -1 | 1, count: number): Draft[] {
  const drafts: Draft[] = [];
  let last = -1;
  for (let i = 0; i < count; i++) {
    if (kind[i] !== KIND.rise && kind[i] !== KIND.drop) continue;
    if (last >= 0 && kind[i] !== kind[last] && i - last <= CHANGE_STATIONS) {
      drafts.push({ code: 'side-changes', side, from: last, to: i, values: [] });
    }
    last = i;
  }
  return drafts;
}

/** The value of largest size in from … to, with its sign; NaN values do not count. */
function largest(values: Float64Array, from: number, to: number): number {
  let most = 0;
  for (let i = from; i <= to; i++) if (Math.abs(values[i]) > Math.abs(most)) most = values[i];
  return most;
}
