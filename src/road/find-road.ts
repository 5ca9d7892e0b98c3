import type { Ground } from '../terrain/index.ts';
import { CENTRE_MARGIN, type CentreLine, centreLine } from './centre-line.ts';
import { sectionReach } from './cut-rule.ts';
import { evenness } from './evenness.ts';
import { cutOff, cutSections, type Sections } from './sections.ts';
import { shiftPath } from './shift-path.ts';
import { pointsEveryMetre, type StationedLine } from './stationed-line.ts';
import { trenches } from './structures.ts';

/** The shift is searched this far to either side, metres; the sections for it reach a little farther. */
const SEARCH_M = 15;
const SECTION_HALF_M = 20;
const SAMPLES_PER_METRE = 2;

/**
 * The middle of the road as the ground shows it, one point a station from `firstM`, `count` of them: the drawn line is
 * smoothed, the road is found beside it, and the line found is smoothed again. `rest` holds points of other road lines.
 */
export function findRoad(
  ground: Ground,
  line: StationedLine,
  firstM: number,
  count: number,
  rest: Float64Array,
): CentreLine {
  const wide = count + 4 * CENTRE_MARGIN;
  const x = new Float64Array(wide);
  const y = new Float64Array(wide);
  pointsEveryMetre(line, firstM - 2 * CENTRE_MARGIN, wide, x, y);
  const drawn = centreLine(x, y, count + 2 * CENTRE_MARGIN);
  const sections = cutOff(cutSections(ground, drawn, SECTION_HALF_M), sectionReach(drawn, rest, SECTION_HALF_M));
  const { shiftM } = shiftPath(evenness(sections, SEARCH_M * SAMPLES_PER_METRE, 1));
  straightenOverTrenches(shiftM, sections);
  for (let i = 0; i < drawn.count; i++) {
    x[i] = drawn.x[i]! + shiftM[i]! * drawn.nx[i]!;
    y[i] = drawn.y[i]! + shiftM[i]! * drawn.ny[i]!;
  }
  return centreLine(x, y, count);
}

/** Stations beside a trench over which the evenness cannot be trusted: what it is pooled over, and the rims. */
const BESIDE = 12;

/** Runs the shift straight across culvert trenches, where the ground is uneven everywhere and the path would wander. */
function straightenOverTrenches(shiftM: Float64Array, { half, width, z }: Sections): void {
  const profile = shiftM.map((shift, i) => z[i * width + half + Math.round(shift * SAMPLES_PER_METRE)]);
  for (const { from, to } of trenches(profile)) {
    const a = Math.max(0, from - BESIDE);
    const b = Math.min(shiftM.length - 1, to + BESIDE);
    const [start, end] = [shiftM[a], shiftM[b]];
    for (let i = a; i <= b; i++) shiftM[i] = start + ((end - start) * (i - a)) / (b - a);
  }
}
