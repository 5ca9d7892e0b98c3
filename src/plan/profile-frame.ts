import type { Study } from '../study/index.ts';
import type { Box } from './boxes.ts';
import type { Pens } from './pens.ts';

/** Where metres fall on the page: one scale for both axes. */
export interface ProfileFrame {
  /** Drawing units per metre. */
  readonly scale: number;
  /** What labels may fill. */
  readonly box: Box;
  readonly pens: Pens;
  /** x of the drop's dimension line. */
  readonly dimensionX: number;
  px(distanceM: number): number;
  py(elevationM: number): number;
  /** Boxes that labels must keep clear of. */
  readonly taken: Box[];
}

const MARGIN = { left: 26, right: 58, top: 58, bottom: 30 };

/** The fan with its words reaches no less far from the edge, drawing units. */
const FAN_CLEAR = 100;
const FAN_M = 16;

/** Heights that a profile spans, metres. */
export function profileSpan({ profile }: Study): { topM: number; bottomM: number } {
  const all = [...profile!.elevationM, ...profile!.behind.elevationM].filter(Number.isFinite);
  return { topM: Math.max(...all), bottomM: Math.min(...all) };
}

/** Fits the bench behind the edge and the whole descent into a page at one scale. */
export function fitProfile(study: Study, width: number, height: number, pens: Pens): ProfileFrame {
  const profile = study.profile!;
  const behindM = Math.max(4, ...profile.behind.distanceM.map((d) => -d));
  const aheadM = Math.max(8, profile.distanceM.at(-1) ?? 0);
  const { topM, bottomM } = profileSpan(study);
  const scale = Math.min(
    (width - MARGIN.left - MARGIN.right) / (behindM + aheadM),
    (height - MARGIN.top - MARGIN.bottom) / Math.max(4, topM - bottomM),
    24,
  );
  const box = { x0: MARGIN.left + 4, y0: 6, x1: width, y1: height - 8 };
  return profileFrame(study, { scale, edgeX: MARGIN.left + behindM * scale, topY: MARGIN.top, box, pens });
}

/** A frame at a given scale whose edge stands at x and whose highest ground stands at y on the page. */
export function profileFrame(
  study: Study,
  { scale, edgeX, topY, box, pens }: { scale: number; edgeX: number; topY: number; box: Box; pens: Pens },
): ProfileFrame {
  const { topM } = profileSpan(study);
  const aheadM = Math.max(8, study.profile!.distanceM.at(-1) ?? 0);
  const px = (distanceM: number): number => edgeX + distanceM * scale;
  // Past the fan's words, where the descent is shorter than the fan.
  const past = Math.max(px(aheadM), edgeX + FAN_CLEAR, px(FAN_M) + 10);
  const py = (elevationM: number): number => topY + (topM - elevationM) * scale;
  return { ...{ scale, box, pens, px, py }, dimensionX: Math.min(box.x1 - 30, past + 30), taken: [] };
}
