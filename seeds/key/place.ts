import { type Feature, features, type RoadKey } from '../recipe.ts';
import type { KeySide } from './rows.ts';

/** How a station counts: 'easy'; a hard place that has an edge; or a place left out, where no single answer is right. */
export type Place =
  | 'easy'
  | 'rounded'
  | 'berm'
  | 'taper'
  | 'sparse'
  | 'hairpin'
  | 'soft shoulder'
  | 'retaining wall'
  | 'culvert'
  | 'through-fill'
  | 'bridge'
  | 'divided'
  | 'mouth'
  | 'switchback'
  | 'cut-to-fill'
  | 'marginal'
  | 'end';

export const hardPlaces: readonly Place[] = ['rounded', 'berm', 'taper', 'sparse', 'hairpin'];

export const leftOutPlaces: readonly Place[] = [
  'soft shoulder',
  'retaining wall',
  'culvert',
  'through-fill',
  'bridge',
  'divided',
  'mouth',
  'switchback',
  'cut-to-fill',
  'marginal',
  'end',
];

/** Features, the place that their stations are, and how far beyond its ends each reaches, metres. */
type Rule = readonly [what: Feature['what'], place: Place, beyond: number];

const leftOut: readonly Rule[] = [
  ['bridge', 'bridge', 12],
  ['culvert', 'culvert', 8],
  ['mouth', 'mouth', 0],
  ['divided', 'divided', 10],
  ['through-fill', 'through-fill', 0],
  ['retaining wall', 'retaining wall', 6],
  ['soft shoulder', 'soft shoulder', 8],
];

const withEdge: readonly Rule[] = [
  ['hairpin', 'hairpin', 30],
  ['sparse returns', 'sparse', 2],
  ['berm', 'berm', 6],
  ['rounded', 'rounded', 6],
];

/** A true edge that moves by more than this from one metre to the next has no certain place, metres. */
const JUMP_M = 0.35;

/** Stations this near to where a drop begins or ends have no certain edge. */
const CHANGE_M = 10;

/** At a hairpin's ends the side ground passes through the level of the bench more slowly. */
const HAIRPIN_CHANGE_M = 15;

/** The place of every station of one side of a road, from the recipe first, then from what lies beside it. */
export function placesOf(road: RoadKey, side: 0 | 1, rows: readonly KeySide[]): Place[] {
  const mine = features.filter((f) => f.road === road && (f.side === 'both' || (f.side === 'left') === (side === 0)));
  const inside = (i: number, what: Feature['what'], beyond: number) =>
    mine.some((f) => f.what === what && i >= f.from - beyond && i < f.to + beyond);
  const named = (i: number, list: typeof leftOut) => list.find(([what, , beyond]) => inside(i, what, beyond))?.[1];
  return rows.map((row, i) => {
    if (i < 12 || i >= rows.length - 12) return 'end';
    const out = named(i, leftOut);
    if (out) return out;
    const reach = inside(i, 'hairpin', 30) ? HAIRPIN_CHANGE_M : CHANGE_M;
    for (let k = Math.max(0, i - reach); k <= Math.min(rows.length - 1, i + reach); k++) {
      if ((rows[k].kind === 'drop') !== (row.kind === 'drop')) return 'cut-to-fill';
    }
    const hard = named(i, withEdge);
    if (hard) return hard;
    if (mine.some((f) => f.what === 'turnout' && (onTaper(i - f.from) || onTaper(f.to - 1 - i)))) return 'taper';
    if (row.kind === 'drop' && jumps(rows, i)) return 'marginal';
    if (row.margin < 1.15 || (row.kind === 'drop' && !row.descent)) return 'marginal';
    return row.descent?.crossings.length ? 'switchback' : 'easy';
  });
}

/** From 14 m before a turnout begins to 2 m inside it. */
const onTaper = (insideM: number): boolean => insideM >= -14 && insideM < 2;

/** True where the true edge jumps within two stations. */
function jumps(rows: readonly KeySide[], i: number): boolean {
  for (let k = i - 2; k < i + 2; k++) {
    const here = rows[k]?.edgeM;
    const next = rows[k + 1]?.edgeM;
    if (here != null && next != null && Math.abs(next - here) > JUMP_M) return true;
  }
  return false;
}
