import type { Study } from '../study/index.ts';
import { palettes } from './palette.ts';
import { makePens } from './pens.ts';
import { fitProfile } from './profile-frame.ts';

/** Where a profile drawn by `profileSvg` has its metres, in units of its view box; for what a screen lays over it. */
export interface ProfileScale {
  px(distanceM: number): number;
  py(elevationM: number): number;
  /** Metres from the edge at an x. */
  distanceAt(x: number): number;
}

/** The scale of `profileSvg` for a study that has a profile, in a frame of the same size. */
export function profileScale(study: Study, width: number, height: number): ProfileScale {
  const { px, py, scale } = fitProfile(study, width, height, makePens(palettes.light));
  return { px, py, distanceAt: (x) => (x - px(0)) / scale };
}
