import type { DescentLine } from './descent-line.ts';
import type { FallLine } from './fall-line.ts';
import type { Hill } from './hill.ts';

/**
 * Where heights of a slope come from: along a straight descent or along a bending fall line. `count` heights every `stepM`
 * of horizontal length, the first at the edge, metres.
 */
export interface SlopeSample {
  readonly lengthM: number;
  cubic(stepM: number, count: number): Float64Array;
}

export function sampleOfLine(hill: Hill, { start, direction, lengthM }: DescentLine): SlopeSample {
  return {
    lengthM,
    cubic(stepM, count) {
      const heights = new Float64Array(count);
      hill.cubicHeights(start.x, start.y, direction.x * stepM, direction.y * stepM, count, heights, 0);
      return heights;
    },
  };
}

export function sampleOfFallLine(hill: Hill, fall: FallLine): SlopeSample {
  const last = fall.x.length - 1;
  return {
    lengthM: last * fall.stepM,
    cubic(stepM, count) {
      const heights = new Float64Array(count);
      for (let k = 0; k < count; k++) {
        const at = Math.min(last, (k * stepM) / fall.stepM);
        const i = Math.min(last - 1, Math.floor(at));
        const t = at - i;
        const x = fall.x[i] + t * (fall.x[i + 1] - fall.x[i]);
        const y = fall.y[i] + t * (fall.y[i + 1] - fall.y[i]);
        hill.cubicHeights(x, y, 0, 0, 1, heights, k);
      }
      return heights;
    },
  };
}
