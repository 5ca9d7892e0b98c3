import type { Study } from '../study/index.ts';

/** Where metres fall on the page: one scale for both axes. */
export interface ProfileFrame {
  /** Drawing units per metre. */
  readonly scale: number;
  readonly left: number;
  readonly width: number;
  readonly height: number;
  /** x of the drop's dimension line. */
  readonly dimensionX: number;
  px(distanceM: number): number;
  py(elevationM: number): number;
  /** Boxes that labels must keep clear of. */
  readonly taken: { x0: number; y0: number; x1: number; y1: number }[];
}

const MARGIN = { left: 26, right: 58, top: 58, bottom: 30 };

/** Fits the bench behind the edge and the whole descent into the page at one scale. */
export function profileFrame(study: Study, width: number, height: number): ProfileFrame {
  const profile = study.profile!;
  const behindM = Math.max(4, ...profile.behind.distanceM.map((d) => -d));
  const aheadM = Math.max(8, profile.distanceM.at(-1) ?? 0);
  const all = [...profile.elevationM, ...profile.behind.elevationM].filter(Number.isFinite);
  const top = Math.max(...all);
  const bottom = Math.min(...all);
  const scale = Math.min(
    (width - MARGIN.left - MARGIN.right) / (behindM + aheadM),
    (height - MARGIN.top - MARGIN.bottom) / Math.max(4, top - bottom),
    24,
  );
  const left = MARGIN.left;
  const px = (distanceM: number): number => left + (distanceM + behindM) * scale;
  const py = (elevationM: number): number => MARGIN.top + (top - elevationM) * scale;
  return {
    scale,
    left,
    width,
    height,
    dimensionX: Math.min(width - 30, px(aheadM) + 30),
    px,
    py,
    taken: [{ x0: width - 230, y0: 0, x1: width, y1: 40 }],
  };
}
