import type { DescentLine } from './descent-line.ts';
import type { FallLine } from './fall-line.ts';
import type { Hill } from './hill.ts';

/** A slope to be read: along a straight descent or along a bending fall line. Distances horizontal from the edge, metres. */
export interface SlopeSample {
  readonly lengthM: number;
  /** The way in plan, x, y pairs. */
  readonly points: Float64Array;
  /**
   * `count` heights every `stepM` from `fromM` on, by cubic convolution, metres; before the edge and past the end the way
   * goes straight on.
   */
  heights(fromM: number, stepM: number, count: number): Float64Array;
}

export function sampleOfLine(hill: Hill, { start, end, direction, lengthM }: DescentLine): SlopeSample {
  return {
    lengthM,
    points: Float64Array.of(start.x, start.y, end.x, end.y),
    heights(fromM, stepM, count) {
      const heights = new Float64Array(count);
      const x = start.x + direction.x * fromM;
      const y = start.y + direction.y * fromM;
      hill.cubicHeights(x, y, direction.x * stepM, direction.y * stepM, count, heights, 0);
      return heights;
    },
  };
}

/** A fall line of two points and more. */
export function sampleOfFallLine(hill: Hill, fall: FallLine): SlopeSample {
  const last = fall.x.length - 1;
  const point = new Float64Array(2);
  const locate = (distanceM: number): void => {
    const at = distanceM / fall.stepM;
    const i = Math.min(last - 1, Math.max(0, Math.floor(at)));
    point[0] = fall.x[i] + (at - i) * (fall.x[i + 1] - fall.x[i]);
    point[1] = fall.y[i] + (at - i) * (fall.y[i + 1] - fall.y[i]);
  };
  return {
    lengthM: last * fall.stepM,
    points: Float64Array.from({ length: 2 * (last + 1) }, (_, i) => (i % 2 ? fall.y : fall.x)[i >> 1]),
    heights(fromM, stepM, count) {
      const heights = new Float64Array(count);
      for (let k = 0; k < count; k++) {
        locate(fromM + k * stepM);
        hill.cubicHeights(point[0], point[1], 0, 0, 1, heights, k);
      }
      return heights;
    },
  };
}
