import { heightAt } from '../terrain/index.ts';
import { toDegrees } from '../units/index.ts';
import type { DrawnFrame } from './as-drawn.ts';
import type { BenchInput } from './bench-input.ts';
import type { Bench, BenchSide } from './bench-types.ts';
import { KIND } from './edge-kind.ts';

/** How far beyond the assumed edge the ground is read: this many metres, and one and two cells. */
const LOOK_M = 20;
/** Coarse cells flatten banks, so that a side counts as falling or rising from here up (tangent; judgement) … */
const FALLS = 0.1;
/** … where the ground comes to stand this much lower or higher, metres. */
const FALL_M = 2;
/** Grade over cells that hide the road is taken this far either way, stations. */
const GRADE_HALF = 20;

/**
 * A bench on ground too coarse to show one: its edges stand at half the tagged or assumed width, one sigma is the cell
 * size, and a side drops where the ground beyond falls at all: coarse cells hide how steeply.
 */
export function assumedBench(input: BenchInput, drawn: DrawnFrame, firstStationM: number): Bench {
  const { ground, carriageway } = input;
  const count = drawn.x.length;
  const cellM = ground.layers[0]?.info.cellM ?? Number.NaN;
  const heightM = Float64Array.from(drawn.x, (x, i) => heightAt(ground, x, drawn.y[i]));
  const half = new Float64Array(count);
  for (let i = 0; i < count; i++) half[i] = widthAt(carriageway, firstStationM + i).widthM / 2;
  const nan = (): Float64Array => new Float64Array(count).fill(Number.NaN);
  const gradeDeg = heightM.map((_, i) => {
    const a = Math.max(0, i - GRADE_HALF);
    const b = Math.min(count - 1, i + GRADE_HALF);
    return toDegrees(Math.atan((heightM[b] - heightM[a]) / Math.max(1, b - a)));
  });
  return {
    firstStationM,
    count,
    how: 'assumed',
    rule: `half of ${widthAt(carriageway, firstStationM + (count >> 1)).rule}`,
    ...{ x: drawn.x, y: drawn.y, normalX: drawn.nx, normalY: drawn.ny },
    left: assumedSide(input, drawn, -1, half, heightM, cellM),
    right: assumedSide(input, drawn, 1, half, heightM, cellM),
    shiftM: new Float64Array(count),
    heightM,
    gradeDeg,
    crossfallDeg: nan(),
    under: new Uint8Array(count),
    notes: [],
  };
}

function assumedSide(
  { ground, setbacks }: BenchInput,
  { x, y, nx, ny }: DrawnFrame,
  side: -1 | 1,
  half: Float64Array,
  heightM: Float64Array,
  cellM: number,
): BenchSide {
  const count = half.length;
  const offset = half.map((d) => side * d);
  const kind = new Uint8Array(count);
  const outerSlope = new Float64Array(count);
  const fallM = new Float64Array(count);
  const looks = [LOOK_M, Math.max(LOOK_M, cellM), Math.max(LOOK_M, 2 * cellM)];
  for (let i = 0; i < count; i++) {
    const at = (run: number): number => {
      const o = side * (half[i] + run);
      return heightAt(ground, x[i] + o * nx[i], y[i] + o * ny[i]);
    };
    const slopes = looks.map((look) => (at(look) - heightM[i]) / look).filter((slope) => !Number.isNaN(slope));
    const steepest = slopes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
    const deepest = Math.min(0, ...looks.map((look) => at(look) - heightM[i]).filter((rise) => !Number.isNaN(rise)));
    const falls = looks.some((look) => heightM[i] - at(look) >= Math.max(FALL_M, FALLS * look));
    const rises = looks.some((look) => at(look) - heightM[i] >= Math.max(FALL_M, FALLS * look));
    outerSlope[i] = falls ? Math.min(...slopes) : steepest;
    fallM[i] = -deepest;
    kind[i] = falls ? KIND.drop : rises ? KIND.rise : KIND.none;
  }
  return {
    edgeOffsetM: offset,
    sigmaM: new Float64Array(count).fill(cellM),
    kind,
    firmOffsetM: offset.slice(),
    usableOffsetM: half.map((d) => side * Math.max(0, d - setbacks.edgeM)),
    lipOffsetM: new Float64Array(count).fill(Number.NaN),
    edgeX: x.map((v, i) => v + offset[i] * nx[i]),
    edgeY: y.map((v, i) => v + offset[i] * ny[i]),
    edgeHeightM: heightM.slice(),
    outerSlope,
    fallM,
    bankM: new Float64Array(count).fill(Number.NaN),
    above: new Array(count).fill(null),
  };
}

function widthAt(spans: BenchInput['carriageway'], stationM: number): { widthM: number; rule: string } {
  return spans.find(({ fromM, toM }) => stationM >= fromM && stationM <= toM) ?? spans[0];
}
