import type { Study } from '../study/index.ts';
import { formatAngleRange, formatDegrees, formatLength, toDegrees, type UnitSystem } from '../units/index.ts';
import { edgeFan } from './fan.ts';
import { type LabelRequest, placeLabels } from './labels.ts';
import { paper, pens } from './pens.ts';
import { profileFrame } from './profile-frame.ts';
import { readingProtractor } from './protractor.ts';
import { scaleBars } from './scale-bars.ts';
import { element, num, pathThrough, text } from './svg.ts';

export interface ProfileDrawing {
  readonly units: UnitSystem;
  /** Drawing size in units of the view box; 96 units are one inch on paper. */
  readonly width: number;
  readonly height: number;
}

/**
 * The profile of a study as SVG text, at true scale: one scale for distance and height, whatever the frame. The class is
 * read at the small protractor on the governing stretch; the fan at the edge shows the rule.
 *
 * ```
 *   bench ──┐ fan
 *           ╲╲──── 0°
 *            ╲ ╲ protractor at the steepest stretch
 *             ╲___ end
 * ```
 */
export function profileSvg(study: Study, drawing: ProfileDrawing): string {
  const { width, height, units } = drawing;
  const open = (children: string, title: string): string =>
    element(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: `0 0 ${num(width)} ${num(height)}`,
        class: 'profile-drawing',
        role: 'img',
        'aria-label': title,
      },
      element('rect', { class: 'sheetground', x: 0, y: 0, width, height, fill: paper }) + children,
    );
  const { profile, edge, descent, angle } = study;
  if (!profile || !edge || !descent)
    return open(text(24, 40, 'No profile: no drop edge here.', pens.word), study.sentence);

  const frame = profileFrame(study, width, height);
  const { px, py, scale } = frame;
  const ground: number[] = [];
  for (let i = 0; i < profile.distanceM.length; i++) ground.push(px(profile.distanceM[i]!), py(profile.elevationM[i]!));
  const behind: number[] = [px(0), py(edge.elevationM)];
  for (let i = 0; i < profile.behind.distanceM.length; i++) {
    behind.push(px(profile.behind.distanceM[i]!), py(profile.behind.elevationM[i]!));
  }
  const rope: number[] = [];
  for (let i = 0; i < descent.ropeCorners.distanceM.length; i++) {
    rope.push(px(descent.ropeCorners.distanceM[i]!), py(descent.ropeCorners.elevationM[i]!));
  }
  const heightAt = heightReader(profile.distanceM, profile.elevationM);
  const groundPen = angle?.class === 'undecided' ? pens.groundUndecided : pens.ground;
  // The line is as wide as the elevation is uncertain, never under 1.4.
  const groundWidth = Math.max(1.4, Math.min(8, 2 * (study.terrain.verticalRmseM ?? 0) * scale, 8));

  const parts: string[] = [];
  parts.push(scaleBars(frame, units));
  parts.push(
    edgeFan(frame, edge.elevationM, study.angle?.rule ?? null, (rangeM) =>
      toDegrees(Math.atan2(edge.elevationM - heightAt(rangeM * 0.85), rangeM * 0.85)),
    ),
  );
  parts.push(element('path', { ...groundPen, d: pathThrough(behind), 'stroke-width': groundWidth }));
  parts.push(element('path', { ...groundPen, d: pathThrough(ground), 'stroke-width': groundWidth }));
  if (angle) parts.push(readingProtractor(frame, angle, heightAt));
  if (rope.length > 2) parts.push(element('path', { ...pens.rope, d: pathThrough(rope) }));
  parts.push(attendantAtEdge(px(0), py(edge.elevationM), scale));

  frame.taken.push({ x0: px(0) - 8, y0: py(edge.elevationM) - 34, x1: px(0) + 8, y1: py(edge.elevationM) + 4 });
  const labels = labelRequests(study, units, px, py, heightAt).filter(
    ({ kind }) => width >= NARROW || kind !== 'small',
  );
  const topOfInk = inkReader(ground, rope);
  const bounds = { x0: frame.left + 4, y0: 6, x1: frame.dimensionX - 6, y1: height - 8 };
  for (const label of placeLabels(labels, topOfInk, bounds, frame.taken)) {
    const pen = pens[label.kind];
    const toX = Math.min(Math.max(label.x, label.textX - 3), label.textX + 8);
    parts.push(
      element('path', {
        ...pens.leader,
        d: pathThrough([label.x, label.y - 4, toX, label.textY + (label.lines.length - 1) * 14 + 3]),
      }),
    );
    label.lines.forEach((words, i) => {
      parts.push(text(label.textX, label.textY + i * 14, words, pen));
    });
  }
  for (const contact of descent.contacts) {
    parts.push(
      element('circle', { ...pens.contact, cx: px(contact.distanceM), cy: py(heightAt(contact.distanceM)), r: 3.6 }),
    );
  }
  parts.push(endSign(px(descent.horizontalM), py(descent.end.elevationM)));
  parts.push(dropDimension(study, frame, units));
  parts.push(element('circle', { ...pens.contact, class: 'edge-dot', cx: px(0), cy: py(edge.elevationM), r: 3 }));
  return open(parts.join(''), `True-scale profile. ${study.sentence}`);
}

/** Under this width, drawing units, only the reading and the stops are named: the rest stands in the notes. */
const NARROW = 560;

/** What is named on the drawing, from the edge outward. */
function labelRequests(
  study: Study,
  units: UnitSystem,
  px: (m: number) => number,
  py: (m: number) => number,
  heightAt: (m: number) => number,
): LabelRequest[] {
  const { angle, descent, edge } = study;
  const list: LabelRequest[] = [];
  const at = (distanceM: number, lines: string[], kind: LabelRequest['kind'] = 'label') =>
    list.push({ x: px(distanceM), y: py(heightAt(distanceM)), lines, kind });
  const length = (m: number) => formatLength(m, units);
  if (!descent || !edge) return list;
  if (angle) {
    const middle = (angle.stretchM[0] + angle.stretchM[1]) / 2;
    const reading =
      angle.class === 'undecided' ? `class undecided, as ${angle.planAs}` : `class read here: ${angle.class}`;
    at(
      middle,
      [
        `${formatDegrees(angle.governingDeg)}, ${formatAngleRange(angle.rangeDeg[0], angle.rangeDeg[1])}`,
        `${reading}, steepest ${length(angle.stretchM[1] - angle.stretchM[0])}`,
      ],
      'strong',
    );
  }
  for (const step of descent.steps) at(step.distanceM, [`step about ${length(step.heightM)}: stop`], 'stop');
  for (const contact of descent.contacts)
    at(contact.distanceM, [`contact, bend ${formatDegrees(contact.bendDeg)}`], 'small');
  for (const crossing of descent.crossings) {
    at(crossing.distanceM, [`${crossing.kind}, ${length(crossing.widthM)} wide`], 'small');
  }
  if (descent.sightLostAtM !== null) {
    at(descent.sightLostAtM, [`load out of sight from ${length(descent.sightLostAtM)}`], 'small');
  }
  at(
    descent.horizontalM,
    [endWords[descent.end.why], `rope line ${formatLength(descent.ropeLineM, units, 'up')}`],
    'small',
  );
  return list;
}

const endWords: Readonly<Record<NonNullable<Study['descent']>['end']['why'], string>> = {
  'patient point': 'patient point',
  'ground levels': 'ground levels',
  water: 'water',
  road: 'road below',
  limit: 'descent goes on, limit reached',
  'fall line bends': 'fall line bends, ground goes on',
  'no data': 'no elevation data beyond',
};

/** Bilinear reading of the profile's own samples at a distance, metres. */
function heightReader(distanceM: readonly number[], elevationM: readonly number[]): (m: number) => number {
  return (m) => {
    let i = 0;
    while (i < distanceM.length - 2 && distanceM[i + 1]! < m) i++;
    const run = distanceM[i + 1]! - distanceM[i]! || 1;
    const t = Math.min(1, Math.max(0, (m - distanceM[i]!) / run));
    return elevationM[i]! + t * (elevationM[i + 1]! - elevationM[i]!);
  };
}

/** The highest ink between two x, smaller y higher, from polylines given as x, y pairs. */
function inkReader(...lines: readonly number[][]): (x0: number, x1: number) => number {
  return (x0, x1) => {
    let top = Number.POSITIVE_INFINITY;
    for (const line of lines) {
      for (let i = 0; i + 3 < line.length; i += 2) {
        const a = line[i]!;
        const b = line[i + 2]!;
        if (Math.max(a, b) >= x0 && Math.min(a, b) <= x1) top = Math.min(top, line[i + 1]!, line[i + 3]!);
      }
    }
    return top;
  };
}

/** The edge attendant, 1.7 m tall and to scale, no smaller than 8 units so that the eye still finds it. */
function attendantAtEdge(x: number, y: number, scale: number): string {
  const tall = Math.max(8, 1.7 * scale);
  const head = tall * 0.1;
  const shoulder = y - tall * 0.78;
  const hip = y - tall * 0.45;
  return (
    element('path', {
      ...pens.figure,
      d: `M${num(x)} ${num(shoulder)}V${num(hip)}L${num(x - tall * 0.14)} ${num(y)}M${num(x)} ${num(hip)}L${num(x + tall * 0.14)} ${num(y)}`,
    }) + element('circle', { ...pens.solid, class: 'figure head', cx: x, cy: y - tall * 0.88, r: head })
  );
}

/** The end of the descent: a circle in quarters, as on the map. */
const endSign = (x: number, y: number): string =>
  element('circle', { ...pens.contact, cx: x, cy: y - 5, r: 5.5 }) +
  element('path', {
    ...pens.solid,
    d: `M${num(x)} ${num(y - 5)}v-5.5a5.5 5.5 0 0 1 5.5 5.5zM${num(x)} ${num(y - 5)}v5.5a5.5 5.5 0 0 1 -5.5 -5.5z`,
  });

/** The drop, dimensioned at the right end of the drawing. */
function dropDimension(study: Study, frame: ReturnType<typeof profileFrame>, units: UnitSystem): string {
  const { edge, descent } = study;
  if (!edge || !descent) return '';
  const x = frame.dimensionX;
  const y0 = frame.py(edge.elevationM);
  const y1 = frame.py(descent.end.elevationM);
  const words = `drop ${formatLength(descent.dropM, units)}`;
  const middle = (y0 + y1) / 2;
  return (
    element('path', {
      ...pens.dimension,
      d: `M${num(x - 4)} ${num(y0)}h8M${num(x)} ${num(y0)}V${num(y1)}M${num(x - 4)} ${num(y1)}h8`,
    }) +
    text(x + 5, middle, words, {
      ...pens.label,
      'text-anchor': 'middle',
      transform: `rotate(90 ${num(x + 5)} ${num(middle)})`,
    })
  );
}
