import type { Grid } from '../../src/terrain/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { splineAt } from '../fields/spline.ts';
import type { Feature } from '../recipe.ts';
import type { RoadLine } from './plan.ts';
import type { RoadDesign } from './road-design.ts';
import type { SlopeKind, SlopeShape } from './shapes.ts';

/** A run of stations with one kind of slope below one side. */
export interface Stretch {
  readonly side: 0 | 1;
  readonly from: number;
  readonly to: number;
  readonly shape: SlopeShape;
}

const kinds: readonly SlopeKind[] = [
  'plane',
  'two',
  'natural',
  'convex',
  'concave',
  'three',
  'natural',
  'S',
  'bench',
  'plane',
  'rough',
  'natural',
  'two',
  'wall',
];

/** What keeps laid-down slopes 30 m off. */
const keepsOff: ReadonlySet<Feature['what']> = new Set(['hairpin', 'bridge', 'mouth', 'through-fill', 'divided']);

/**
 * Deals out kinds of slope and angles along the falling side of a road, each for 70 to 110 m: angles from 18 to 58
 * degrees in a golden-ratio order, as far as the land beside the road lets them stand; nothing is laid down where another
 * leg of road lies below. Flat stretches and box cuts come from the recipe.
 */
export function scheduleSlopes(
  road: RoadDesign,
  land: Grid,
  mine: readonly Feature[],
  all: readonly RoadLine[],
  from: number,
): Stretch[] {
  const out: Stretch[] = [];
  for (const f of mine) {
    if (f.what !== 'flat' && f.what !== 'box cut') continue;
    const shape: SlopeShape = { kind: f.what === 'flat' ? 'flat' : 'mound', angleDeg: 34, heightM: 4 };
    for (const side of [0, 1] as const) {
      if (f.side === 'both' || (f.side === 'left') === (side === 0)) out.push({ side, from: f.from, to: f.to, shape });
    }
  }
  const random = seededRandom(from);
  const count = road.line.s.length;
  let turn = Math.floor(random.next() * kinds.length);
  let golden = random.next();
  for (let at = 20; at + 50 < count; ) {
    const to = Math.min(count - 10, Math.round(at + 70 + 40 * random.next()));
    const kind = kinds[turn++ % kinds.length];
    golden = (golden + 0.61803398875) % 1;
    const middle = Math.round((at + to) / 2);
    const side = fallingSide(road, land, middle);
    const taken =
      out.some((s) => s.from < to && s.to > at) ||
      mine.some((f) => keepsOff.has(f.what) && f.from - 30 < to && f.to + 30 > at);
    if (kind !== 'natural' && side !== null && !taken && isFree(road, side, at, to, all)) {
      const shape = shapeFor(kind, 20 + 39 * golden ** 1.25, naturalFall(road, land, side, middle), random.next());
      if (shape) out.push({ side, from: at, to, shape });
    }
    at = to;
  }
  return out;
}

/** A shape that the land lets stand, or null: far gentler slopes than the hillside's would end in the air. */
function shapeFor(kind: SlopeKind, angleDeg: number, hillside: number, chance: number): SlopeShape | null {
  const steep = Math.tan((angleDeg * Math.PI) / 180);
  if (steep < hillside - 0.12) return null;
  const heightM = Math.min(6 + 14 * chance, 30 * steep);
  return {
    kind,
    angleDeg,
    heightM: kind === 'wall' ? Math.max(9, heightM) : heightM,
    outer: Math.max(0.72, hillside + 0.3),
  };
}

/** Mean fall of the land beside the road, tangent, from 6 to 36 m off the middle. */
function naturalFall(road: RoadDesign, land: Grid, side: 0 | 1, i: number): number {
  return (heightBeside(road, land, side, i, 6) - heightBeside(road, land, side, i, 36)) / 30;
}

function fallingSide(road: RoadDesign, land: Grid, i: number): 0 | 1 | null {
  const z = road.line.z[i];
  const left = z - heightBeside(road, land, 0, i, 14);
  const right = z - heightBeside(road, land, 1, i, 14);
  if (Math.max(left, right) < 1) return null;
  return left > right ? 0 : 1;
}

/** Height of the land a distance off the road's middle on one side, metres. */
export function heightBeside(road: RoadDesign, land: Grid, side: 0 | 1, i: number, awayM: number): number {
  const away = side === 0 ? awayM : -awayM;
  return splineAt(land, road.line.x[i] - road.ty[i] * away, road.line.y[i] + road.tx[i] * away);
}

/** True where no other leg of road lies within reach below the side. */
function isFree(road: RoadDesign, side: 0 | 1, from: number, to: number, all: readonly RoadLine[]): boolean {
  for (let i = from; i < to; i += 10) {
    for (let away = 12; away < 84; away += 8) {
      const d = side === 0 ? away : -away;
      const x = road.line.x[i] - road.ty[i] * d;
      const y = road.line.y[i] + road.tx[i] * d;
      for (const other of all) {
        for (let k = 0; k < other.line.x.length; k += 6) {
          if (other.key === road.key && Math.abs(k - i) < 70) continue;
          if (Math.hypot(other.line.x[k] - x, other.line.y[k] - y) < 14) return false;
        }
      }
    }
  }
  return true;
}
