import type { Study } from '../study/index.ts';
import { azimuthGap, formatLength, toRadians, type UnitSystem } from '../units/index.ts';
import { benchRope } from './bench-rope.ts';
import type { Pens } from './pens.ts';
import type { ShownPlace } from './place-words.ts';
import { planDrawing } from './plan-drawing.ts';
import { planExtent } from './plan-extent.ts';
import { type PlanFrame, planFrame } from './plan-frame.ts';
import { planGround } from './plan-ground.ts';
import { profileDrawing } from './profile-drawing.ts';
import { type ProfileFrame, profileFrame, profileSpan } from './profile-frame.ts';
import { scaleBars, scaleBarsBox } from './scale-bars.ts';
import type { ShownLayouts } from './shown-layouts.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { textBlock } from './text-block.ts';
import { textWidth } from './text-width.ts';
import { whyNothing } from './why-nothing.ts';

const MOST_PLAN = 600;
/** Labels need so much height, however small the scale; where the page is low, this share of it. */
const LEAST_PLAN = 360;
const LEAST_SHARE = 0.46;
const MOST_PROFILE = 620;
const MOST_SCALE = 14;
/** Between the plan's neat line and the highest ground of the profile. */
const GAP = 74;
/** The edge fan with its words hangs no less deep under the edge: units, and metres. */
const LEAST_FAN = 110;
const FAN_M = 15;
/** Under the lowest ground: units, and metres. */
const LEAST_FOOT = 34;
const FOOT_M = 4;
/** Without a profile the plan has its bars alone under it. */
const BARS = 44;
/** Right of the descent's end, for the drop's dimension. */
const RIGHT = 60;

/** Where the pair stands; `height` left out where the page grows with it. Drawing units. */
interface PairPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height?: number;
}

interface DrawnPair {
  readonly svg: string;
  readonly height: number;
  readonly scale: number;
  /** Null where the study has no bench; the profile's where it has no descent. */
  readonly plan: PlanFrame | null;
  readonly profile: ProfileFrame | null;
}

/** Plan view and profile under it at one scale, their x one axis, joined by dotted drops; heights in drawing units. */
export function drawingPair(
  study: Study,
  shown: ShownLayouts,
  { x, y, width, height }: PairPlace,
  units: UnitSystem,
  pens: Pens,
  places: readonly ShownPlace[] = [],
): DrawnPair {
  const why = whyNothing(study);
  const note =
    why && !study.sentence.includes(why)
      ? textBlock(why, { x, y, width }, pens.heading, 'serif')
      : { svg: '', height: 0 };
  if (!study.bench) return { ...note, scale: 1, plan: null, profile: null };
  const top = y + note.height + (note.height > 0 ? 6 : 0);
  const ground = planGround(study);
  const extent = planExtent(study, ground, shown);
  const { profile, descent } = study;
  const behindM = Math.max(extent.behindM, ...(profile?.behind.distanceM.map((d) => -d) ?? []));
  const span = profile && descent ? profileSpan(study) : null;
  const acrossM = extent.leftM + extent.rightM;
  const edgeDownM = span ? span.topM - (study.edge?.elevationM ?? span.topM) : 0;
  const heightM = span ? span.topM - span.bottomM : 0;
  const room = height === undefined ? null : y + height - top;
  const leastPlan = room === null ? LEAST_PLAN : Math.min(LEAST_PLAN, LEAST_SHARE * room);
  const scale = Math.min(
    (width - RIGHT) / (behindM + extent.aheadM),
    room === null
      ? Math.min(MOST_PLAN / acrossM, span ? MOST_PROFILE / Math.max(4, heightM) : MOST_SCALE)
      : scaleInto(room, leastPlan, acrossM, span && { heightM, edgeDownM }),
    MOST_SCALE,
  );
  const profileHeight = span ? GAP + depthOf(scale, { heightM, edgeDownM }) : BARS;
  const planHeight = Math.max(leastPlan, acrossM * scale, room === null ? 0 : room - profileHeight);
  const box = { x0: x, y0: top, x1: x + width, y1: top + planHeight };
  const edgeX = x + behindM * scale;
  const edgeY = top + extent.leftM * scale + (planHeight - acrossM * scale) / 2;
  const plan = planFrame(ground, pens, { scale, box, edgeX, edgeY });
  const bars = { x: x + width, y: box.y1 + 14 };
  const drawn = planDrawing(study, shown, plan, units, { places });
  const told = { x: x + width, y: box.y1 + 50 };
  let svg =
    note.svg +
    drawn.svg +
    scaleBars({ ...bars, scale, units, pens }) +
    (drawn.contours === '' ? '' : text(told.x, told.y, drawn.contours, { ...pens.small, 'text-anchor': 'end' }));
  const pair = { scale, plan, height: box.y1 + profileHeight - y };
  if (!span) return { ...pair, svg, profile: null };
  const frame = profileFrame(study, {
    ...{ scale, edgeX, pens, topY: box.y1 + GAP },
    box: { x0: x, y0: box.y1 + 6, x1: x + width, y1: box.y1 + profileHeight },
  });
  frame.taken.push(scaleBarsBox(bars), { x0: told.x - 100, y0: told.y - 11, x1: told.x, y1: told.y + 4 });
  svg += benchDimension(study, frame, box.y1 + 32, units);
  svg += drops(study, plan, frame) + profileDrawing(study, frame, units);
  if (shown.chosen) svg += benchRope(study, shown.chosen, frame);
  return { ...pair, svg, profile: frame };
}

interface ProfileDepth {
  readonly heightM: number;
  readonly edgeDownM: number;
}

/** From the highest ground down to what hangs lowest, drawing units. */
const depthOf = (scale: number, { heightM, edgeDownM }: ProfileDepth): number =>
  Math.max(
    heightM * scale + Math.max(LEAST_FOOT, FOOT_M * scale),
    edgeDownM * scale + Math.max(LEAST_FAN, FAN_M * scale),
  );

/** The largest scale at which plan and profile take no more than `room`. */
function scaleInto(room: number, leastPlan: number, acrossM: number, depth: ProfileDepth | null): number {
  const plans = [
    { fixed: leastPlan, perM: 0 },
    { fixed: 0, perM: acrossM },
  ];
  const profiles = depth
    ? [
        { fixed: GAP + LEAST_FOOT, perM: depth.heightM },
        { fixed: GAP, perM: depth.heightM + FOOT_M },
        { fixed: GAP + LEAST_FAN, perM: depth.edgeDownM },
        { fixed: GAP, perM: depth.edgeDownM + FAN_M },
      ]
    : [{ fixed: BARS, perM: 0 }];
  const scales = plans.flatMap((a) => profiles.map((b) => (room - a.fixed - b.fixed) / (a.perM + b.perM)));
  return Math.min(...scales.filter((scale) => scale > 0));
}

/** Dotted drops from the plan to the profile at the edge, every contact and the end. */
export function drops({ descent, edge, profile }: Study, plan: PlanFrame, frame: ProfileFrame): string {
  if (!descent || !edge || !profile) return '';
  const heightAt = (distanceM: number): number => {
    const i = profile.distanceM.findIndex((d) => d >= distanceM);
    return profile.elevationM[i < 0 ? profile.elevationM.length - 1 : i];
  };
  const at = [0, ...descent.contacts.map(({ distanceM }) => Math.max(0, distanceM)), descent.horizontalM];
  const d = [...new Set(at)].map((m) => {
    const px = num(frame.px(m));
    return `M${px} ${num(plan.edgeY)}V${num(frame.py(heightAt(m)))}`;
  });
  return element('path', { ...frame.pens.project, d: d.join('') });
}

/** The road bench as the descent crosses it, dimensioned over the profile. */
export function benchDimension(
  { bench, descent, site }: Study,
  frame: ProfileFrame,
  y: number,
  units: UnitSystem,
): string {
  if (!bench || bench.widthM === null || !descent) return '';
  const slant = azimuthGap(descent.azimuthDeg, site.sideAzimuthDeg);
  if (slant > 60) return '';
  const acrossM = bench.widthM / Math.cos(toRadians(slant));
  const [x0, x1] = [frame.px(-acrossM), frame.px(0)];
  const words = `road bench ${formatLength(bench.widthM, units, 'down')}`;
  // Where the bench is narrow on the page its words begin at the margin.
  const wordsX = Math.max(x1, frame.box.x0 + textWidth([words], 12));
  frame.taken.push({ x0: Math.min(x0, wordsX - textWidth([words], 12)) - 4, y0: y - 18, x1: wordsX + 6, y1: y + 6 });
  return (
    element('path', {
      ...frame.pens.dimension,
      class: 'bench-width dimline',
      d: `${pathThrough([x0, y, x1, y])}M${num(x0)} ${num(y - 4)}v8M${num(x1)} ${num(y - 4)}v8`,
    }) + text(wordsX, y - 6, words, { ...frame.pens.label, 'text-anchor': 'end' })
  );
}
