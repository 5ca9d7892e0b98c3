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

const byFeature: Partial<Record<Feature['what'], { place: Place; beyond: number }>> = {
  bridge: { place: 'bridge', beyond: 12 },
  culvert: { place: 'culvert', beyond: 8 },
  mouth: { place: 'mouth', beyond: 0 },
  divided: { place: 'divided', beyond: 10 },
  'through-fill': { place: 'through-fill', beyond: 0 },
  'retaining wall': { place: 'retaining wall', beyond: 6 },
  'soft shoulder': { place: 'soft shoulder', beyond: 8 },
  hairpin: { place: 'hairpin', beyond: 4 },
  'sparse returns': { place: 'sparse', beyond: 2 },
  berm: { place: 'berm', beyond: 6 },
  rounded: { place: 'rounded', beyond: 6 },
};

/** A true edge that moves by more than this from one metre to the next has no certain place, metres. */
const JUMP_M = 0.35;

/** Stations this near to where a drop begins or ends have no certain edge. */
const CHANGE_M = 10;

/** The place of every station of one side of a road, from the recipe first, then from what lies beside it. */
export function placesOf(road: RoadKey, side: 0 | 1, rows: readonly KeySide[]): Place[] {
  const mine = features.filter((f) => f.road === road && (f.side === 'both' || (f.side === 'left') === (side === 0)));
  return rows.map((row, i) => {
    if (i < 12 || i >= rows.length - 12) return 'end';
    for (const [what, rule] of Object.entries(byFeature)) {
      if (mine.some((f) => f.what === what && i >= f.from - rule.beyond && i < f.to + rule.beyond)) return rule.place;
    }
    const tapers = mine.some(
      (f) => f.what === 'turnout' && ((i >= f.from - 14 && i < f.from + 2) || (i >= f.to - 2 && i < f.to + 14)),
    );
    for (let k = Math.max(0, i - CHANGE_M); k <= Math.min(rows.length - 1, i + CHANGE_M); k++) {
      if ((rows[k].kind === 'drop') !== (row.kind === 'drop')) return 'cut-to-fill';
    }
    if (tapers) return 'taper';
    if (row.kind === 'drop' && jumps(rows, i)) return 'marginal';
    if (row.margin < 1.15 || (row.kind === 'drop' && !row.descent)) return 'marginal';
    return row.descent?.crossings.length ? 'switchback' : 'easy';
  });
}

/** True where the true edge jumps within two stations. */
function jumps(rows: readonly KeySide[], i: number): boolean {
  for (let k = i - 2; k < i + 2; k++) {
    const here = rows[k]?.edgeM;
    const next = rows[k + 1]?.edgeM;
    if (here != null && next != null && Math.abs(next - here) > JUMP_M) return true;
  }
  return false;
}
