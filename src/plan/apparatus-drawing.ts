import type { Study, StudyLayout, StudySpot } from '../study/index.ts';
import { boxesAlong } from './boxes.ts';
import type { PlanFrame } from './plan-frame.ts';
import { spotCorners, spotsOf } from './plan-ground.ts';
import { element, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** How far behind the front the cab's back wall is drawn, metres (a drawing sign, not a measure). */
const CAB_M = 2.2;
const WHEEL_M = 1.1;

/** Apparatus of a layout as true-size outlines, the cab end by its wall and windscreen, the name and its part inside. */
export function apparatusDrawing(study: Study, layout: StudyLayout, frame: PlanFrame, forTeam: boolean): string {
  return spotsOf(study, layout)
    .map((spot) => oneApparatus(spot, roleOf(layout, spot.id), frame, forTeam))
    .join('');
}

/** The outlines of the layout that was not chosen, thin and dashed; spots that the chosen one uses too are left out. */
export function otherApparatus(study: Study, other: StudyLayout, chosen: StudyLayout, frame: PlanFrame): string {
  const used = new Set(spotsOf(study, chosen).map(({ id }) => id));
  return spotsOf(study, other)
    .filter(({ id }) => !used.has(id))
    .map((spot) => {
      const page = frame.page(spotCorners(frame.ground, spot));
      return element('path', { ...frame.pens.apparatusOther, d: `${pathThrough(page)}Z` });
    })
    .join('');
}

/** What a spot does in a layout, in words. */
export function roleOf({ turn, anchor, lines }: StudyLayout, id: string): string {
  const roles = [
    ...(id === turn ? ['turn'] : []),
    ...(id === anchor ? ['anchor'] : []),
    ...(id === lines.belay.anchor && id !== anchor && id !== turn ? ['belay'] : []),
    ...(id === lines.hand?.anchor && id !== anchor && id !== turn ? ['hand line turn'] : []),
  ];
  return roles.join(', ');
}

function oneApparatus(spot: StudySpot, role: string, frame: PlanFrame, forTeam: boolean): string {
  const { pens, scale } = frame;
  const page = frame.page(spotCorners(frame.ground, spot));
  const [ax, ay, bx, by, cx, cy, dx, dy] = page;
  const at = (t: number, u: number): [number, number] => [
    ax + (dx - ax) * t + (bx - ax) * u,
    ay + (dy - ay) * t + (by - ay) * u,
  ];
  const cab = Math.min(0.35, CAB_M / spot.lengthM);
  const wheel = WHEEL_M / spot.lengthM / 2;
  const wheels = [cab * 0.75, 0.78].flatMap((t) =>
    [0, 1].map((u) => pathThrough([...at(t - wheel, u), ...at(t + wheel, u)])),
  );
  let out = element('path', { ...(forTeam ? pens.apparatusForTeam : pens.apparatus), d: `${pathThrough(page)}Z` });
  out += element('path', { ...pens.wheel, 'stroke-width': Math.max(1.4, 0.3 * scale), d: wheels.join('') });
  out += element('path', {
    ...pens.cab,
    d: pathThrough([...at(cab, 0), ...at(cab, 1)]) + pathThrough([...at(cab * 0.4, 0.12), ...at(cab * 0.4, 0.88)]),
  });
  const length = spot.lengthM * scale;
  const name = textWidth([spot.apparatus], 12) < length * 0.72 ? spot.apparatus : '';
  frame.taken.push(
    ...boxesAlong([(ax + bx) / 2, (ay + by) / 2, (cx + dx) / 2, (cy + dy) / 2], (spot.widthM * scale) / 2),
  );
  if (name === '' || spot.widthM * scale < 13) return out;
  const [mx, my] = at(0.55, 0.5);
  const deg = upright((Math.atan2(by - cy, bx - cx) * 180) / Math.PI);
  const half = textWidth([name], 12) / 2;
  const [ux, uy] = [Math.cos((deg * Math.PI) / 180) * half, Math.sin((deg * Math.PI) / 180) * half];
  frame.words.push(...boxesAlong([mx - ux, my - uy, mx + ux, my + uy], 7));
  const lines = spot.widthM * scale >= 27 && role !== '' ? [name, role] : [name];
  lines.forEach((words, i) => {
    const down = lines.length === 1 ? 4 : i === 0 ? -2 : 11;
    const pen = i === 0 ? pens.strong : pens.note;
    out += text(mx, my + down, words, {
      ...pen,
      'text-anchor': 'middle',
      transform: `rotate(${Math.round(deg * 10) / 10} ${Math.round(mx * 100) / 100} ${Math.round(my * 100) / 100})`,
    });
  });
  return out;
}

/** A direction turned so that words along it do not stand on their head, degrees clockwise. */
export function upright(deg: number): number {
  const turned = ((((deg + 90) % 360) + 360) % 360) - 90;
  return turned >= 90 ? turned - 180 : turned;
}
