import { sampleLine } from '../terrain/index.ts';
import { toRadians } from '../units/index.ts';
import { metres } from './rounded.ts';
import type { StudyRelief } from './study.ts';
import type { GroundWork } from './work.ts';

/** What a page can show of a site at the smallest round scale that holds the layouts, metres: behind the edge, past it, to each side. */
const BEHIND_M = 35;
const LEAST_AHEAD_M = 125;
const LEAST_ASIDE_M = 65;
/** Contours need no more points than this; a study is kept on phones. */
const MOST_POINTS = 3400;
const LEAST_STEP_M = 2;
const CM = 100;

/** The contract's `relief`: ground around the edge on a grid that is turned with the descent. Null where no ground is there. */
export function reliefPart({ ground, inputs, side }: GroundWork, sideAzimuthDeg: number): StudyRelief | null {
  const line = side.descent?.line;
  const start = line?.start ?? ground.plane.toLocal(inputs.at);
  const turn = toRadians(sideAzimuthDeg);
  const along = line?.direction ?? { x: Math.sin(turn), y: Math.cos(turn) };
  const lengthM = line?.lengthM ?? 0;
  const aheadM = Math.max(LEAST_AHEAD_M, 1.3 * lengthM + 20);
  const asideM = Math.max(LEAST_ASIDE_M, 0.35 * lengthM);
  const stepM = Math.max(LEAST_STEP_M, Math.sqrt(((BEHIND_M + aheadM) * 2 * asideM) / MOST_POINTS));
  const columns = Math.floor((BEHIND_M + aheadM) / stepM) + 1;
  const rows = Math.floor((2 * asideM) / stepM) + 1;
  const heights = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const aside = -asideM + row * stepM;
    // To the right hand of the descent: its direction turned clockwise.
    const x = start.x - along.x * BEHIND_M + along.y * aside;
    const y = start.y - along.y * BEHIND_M - along.x * aside;
    sampleLine(ground, x, y, along.x * stepM, along.y * stepM, columns, heights, row * columns);
  }
  let baseM = Number.POSITIVE_INFINITY;
  for (const height of heights) if (height < baseM) baseM = height;
  if (!Number.isFinite(baseM)) return null;
  baseM = metres(Math.floor(baseM));
  return {
    fromM: [-BEHIND_M, metres(-asideM)],
    stepM,
    columns,
    baseM,
    overBaseCm: Array.from(heights, (height) => (Number.isNaN(height) ? null : Math.round((height - baseM) * CM))),
  };
}
