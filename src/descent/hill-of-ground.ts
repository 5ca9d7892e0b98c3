import {
  type Ground,
  isScreeningOnly,
  type SurfaceInfo,
  sampleLine,
  sampleLineCubic,
  smoothedGradient,
} from '../terrain/index.ts';
import type { Hill } from './hill.ts';

/** The ground around a site as a descent reads it; `info` is the coarsest surface that the descent stands on. */
export function hillOf(ground: Ground, info: SurfaceInfo): Hill {
  return {
    cellM: info.cellM,
    screeningOnly: isScreeningOnly(info),
    sigmaM: info.verticalRmseM,
    heights: (x, y, dx, dy, n, out, offset) => sampleLine(ground, x, y, dx, dy, n, out, offset),
    cubicHeights: (x, y, dx, dy, n, out, offset) => sampleLineCubic(ground, x, y, dx, dy, n, out, offset),
    gradient: (x, y, out) => smoothedGradient(ground, info.cellM, x, y, out),
  };
}
