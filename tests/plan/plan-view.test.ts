import type { Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { planViewSvg } from '../../src/plan/index.ts';
import { positionAt, studyWithLayouts } from '../helpers/study-with-layouts.ts';
import { coordinates, elementsOf, ofClass, readSvg } from '../helpers/svg-reading.ts';

const size = { units: 'us', width: 900, height: 620 } as const;
const draw = (study = studyWithLayouts(), id: string | null = null) => readSvg(planViewSvg(study, id, size));

/** Page units per metre, read from the descent's line alone, and the edge's place. */
function scaleOf(root: ReturnType<typeof draw>) {
  const [x0, y0, x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
  return { scale: (x1! - x0!) / 45, x: x0!, y: y0! };
}
const distance = (a: number[], i: number, j: number) =>
  Math.hypot(a[2 * i]! - a[2 * j]!, a[2 * i + 1]! - a[2 * j + 1]!);

describe('planViewSvg', () => {
  it('draws haul field, clearances, apparatus and bench at one scale', () => {
    const root = draw();
    const { scale } = scaleOf(root);
    const field = ofClass(root, 'rect', 'haul-field')[0]!;
    expect(Number(field.getAttribute('width')) / scale).toBeCloseTo(24, 1);
    const [, near, far] = elementsOf(field.parentNode as Element, 'rect');
    expect(Number(near!.getAttribute('width')) / scale).toBeCloseTo(1, 1);
    expect(Number(far!.getAttribute('width')) / scale).toBeCloseTo(1.5, 1);
    const outlines = ofClass(root, 'path', 'apparatus').map(coordinates);
    expect(outlines).toHaveLength(2);
    for (const outline of outlines) {
      expect(distance(outline, 0, 3) / scale / 9.5).toBeCloseTo(1, 2);
      expect(distance(outline, 0, 1) / scale / 2.6).toBeCloseTo(1, 2);
    }
    const edgeX = coordinates(ofClass(root, 'path', 'edge', 'drop')[0]!)[0]!;
    const toeX = coordinates(ofClass(root, 'path', 'edge', 'toe')[0]!)[0]!;
    expect((edgeX - toeX) / scale / 9).toBeCloseTo(1, 2);
  });

  it('draws the clearances of the district’s own rates', () => {
    const study = studyWithLayouts();
    const [first] = study.layouts;
    const reasons = first!.reasons.map((each) =>
      'clearanceNearM' in each.inputs
        ? { ...each, inputs: { ...each.inputs, clearanceNearM: 2.2, clearanceAnchorM: 2.8 } }
        : each,
    );
    const root = draw({ ...study, layouts: [{ ...first!, reasons }] });
    const [, near, far] = elementsOf(ofClass(root, 'rect', 'haul-field')[0]!.parentNode as Element, 'rect');
    const { scale } = scaleOf(root);
    expect(Number(near!.getAttribute('width')) / scale).toBeCloseTo(2.2, 1);
    expect(Number(far!.getAttribute('width')) / scale).toBeCloseTo(2.8, 1);
  });

  it('runs the descent to the right and turns north with it', () => {
    // The descent bears south: south is right on the page, so east is up and north is left.
    const root = draw();
    const { scale, x, y } = scaleOf(root);
    const main = coordinates(ofClass(root, 'path', 'rope', 'main')[0]!);
    const expected = [
      [-2, -24],
      [-2, 0],
      [0, 0],
      [45, 0],
    ].flatMap(([along, aside]) => [x + along! * scale, y + aside! * scale]);
    main.forEach((value, i) => {
      expect(Math.abs(value - expected[i]!)).toBeLessThan(0.1 * scale);
    });
    const [tipX, tipY, tailX, , backX, backY] = coordinates(ofClass(root, 'path', 'north')[0]!);
    expect(Math.atan2(tipY! - backY!, tipX! - backX!)).toBeCloseTo(Math.PI, 1);
    expect(tailX).toBeGreaterThan(tipX!);
  });

  it('puts the keep-out and the belay where the study says', () => {
    const root = draw();
    const { scale, x, y } = scaleOf(root);
    const ring = coordinates(ofClass(root, 'path', 'keep-out')[0]!);
    const metres = [
      [0, -3],
      [-2, -24],
      [-2, 0],
      [0, 0],
      [0, 3],
      [45, 3],
      [45, -3],
    ];
    expect(ring).toHaveLength(14);
    metres.forEach(([along, aside], i) => {
      expect(Math.abs(ring[2 * i]! - x - along! * scale)).toBeLessThan(0.1 * scale);
      expect(Math.abs(ring[2 * i + 1]! - y - aside! * scale)).toBeLessThan(0.1 * scale);
    });
    const belay = coordinates(ofClass(root, 'path', 'rope', 'belay')[0]!);
    expect((belay[0]! - x) / scale).toBeCloseTo(-3, 1);
    expect((belay[1]! - y) / scale).toBeCloseTo(3, 1);
    expect(ofClass(root, 'path', 'rope', 'belay')[0]!.getAttribute('stroke-dasharray')).toBeTruthy();
  });

  it('ties the strap to the nearest corner where the resultant misses the apparatus', () => {
    const root = draw();
    const { scale, x, y } = scaleOf(root);
    const [fromX, fromY, toX, toY] = coordinates(ofClass(root, 'path', 'strap')[0]!);
    expect((toX! - x) / scale).toBeCloseTo(-2, 1);
    expect((toY! - y) / scale).toBeCloseTo(0, 1);
    // Toward 225°, southwest: on this page right and down; its tail meets the outline or the nearest corner of Engine 1.
    const corners = ofClass(root, 'path', 'apparatus').map(coordinates)[0]!;
    const near = [0, 1, 2, 3].some((i) => Math.hypot(corners[2 * i]! - fromX!, corners[2 * i + 1]! - fromY!) < 1);
    expect(near).toBe(true);
  });

  it('draws the strap against the resultant where that meets the apparatus', () => {
    const base = studyWithLayouts();
    const spots = base.spots.map((spot) => (spot.id === 'S:A' ? { ...spot, ...positionAt(4, 5.5) } : spot));
    const root = draw({ ...base, spots });
    const { scale, x, y } = scaleOf(root);
    const [fromX, fromY, toX, toY] = coordinates(ofClass(root, 'path', 'strap')[0]!);
    // The force is toward 225°: the strap comes from 45°, northeast, which on this page is up and left at 45°.
    expect((Math.atan2(toY! - fromY!, toX! - fromX!) * 180) / Math.PI).toBeCloseTo(45, 0);
    // Its tail lies on the south side of the outline, 4.2 m behind the edge and 2.2 m east of the turn.
    expect((fromX! - x) / scale).toBeCloseTo(-4.2, 1);
    expect((fromY! - y) / scale).toBeCloseTo(-2.2, 1);
  });

  it('draws a haul whose turn and anchor are trees, without an apparatus', () => {
    const base = studyWithLayouts();
    const layouts = base.layouts.slice(0, 1).map((layout) => ({
      ...layout,
      anchor: 'T1',
      turn: 'T1',
      lines: { ...layout.lines, belay: { ...layout.lines.belay, anchor: 'T1' } },
    }));
    const root = draw({ ...base, layouts, spots: [] });
    expect(ofClass(root, 'path', 'strap')).toHaveLength(0);
    expect(ofClass(root, 'path', 'apparatus')).toHaveLength(0);
    expect(root.textContent).toContain('anchor, tree, lone pine');
  });

  it('hatches the lanes that are blocked, more of them where more are', () => {
    const hatchOf = (lanesBlocked: number) => {
      const study = studyWithLayouts();
      const layouts = study.layouts.map((layout) => ({ ...layout, lanesBlocked }));
      const hatch = ofClass(draw({ ...study, layouts }), 'path', 'lane-hatch')[0];
      const c = hatch ? coordinates(hatch) : [];
      let total = 0;
      for (let i = 0; i + 3 < c.length; i += 4) total += Math.hypot(c[i + 2]! - c[i]!, c[i + 3]! - c[i + 1]!);
      return total;
    };
    expect(hatchOf(0)).toBe(0);
    expect(hatchOf(1)).toBeGreaterThan(0);
    expect(hatchOf(2)).toBeGreaterThanOrEqual(hatchOf(1));
  });

  it('draws the asked layout in full and the other dashed', () => {
    const words = (root: ReturnType<typeof draw>) => elementsOf(root, 'text').map(({ textContent }) => textContent);
    expect(words(draw())).toContain('dashed: straight haul');
    const straight = draw(studyWithLayouts(), 'straight-1');
    expect(words(straight)).toContain('dashed: turned haul');
    const { scale } = scaleOf(straight);
    expect(Number(ofClass(straight, 'rect', 'haul-field')[0]!.getAttribute('width')) / scale).toBeCloseTo(6, 1);
    expect(ofClass(straight, 'path', 'strap')).toHaveLength(0);
  });

  it('never rounds a factor that is just short up to what is needed', () => {
    const words = elementsOf(draw(), 'text')
      .map(({ textContent }) => textContent)
      .join(' ');
    expect(words).toMatch(/hold 3\.9 of 4 needed, not met/);
  });

  it('shows a high place’s layouts dashed, for the technical team, without forces', () => {
    const base = studyWithLayouts();
    const root = draw({ ...base, angle: { ...base.angle!, planAs: 'high', class: 'high' } });
    for (const outline of ofClass(root, 'path', 'apparatus'))
      expect(outline.getAttribute('stroke-dasharray')).toBeTruthy();
    const words = elementsOf(root, 'text')
      .map(({ textContent }) => textContent)
      .join('\n');
    expect(words).toContain('spots dashed: for the technical team');
    expect(words).not.toMatch(/needed|hauler|min\b/);
  });

  it('says in place why there is no layout', () => {
    const warnings = [
      { code: 'no-turned-haul', severity: 'note' as const, text: 'No turned haul: the bench is too narrow.' },
      { code: 'no-straight-haul', severity: 'note' as const, text: 'No straight haul: nothing to tie to.' },
    ];
    const root = draw(studyWithLayouts({ layouts: [], warnings }));
    const words = elementsOf(root, 'text')
      .map(({ textContent }) => textContent)
      .join(' ');
    expect(words).toContain('the bench is too narrow.');
    expect(words).toContain('nothing to tie to.');
    expect(ofClass(root, 'path', 'rope')).toHaveLength(0);
    const structure = draw(
      studyWithLayouts({ bench: null, edge: null, layouts: [], sentence: 'Not computed: structure.' }),
    );
    expect(structure.textContent).toContain('Not computed: structure.');
  });

  it('draws where no edge was found as a dashed end, and marks as symbols', () => {
    const base = studyWithLayouts();
    const stations = base.bench!.stations.map((station, i) =>
      i < 50
        ? { ...station, rightEdgeKind: 'none' as const, rightEdgeOffsetM: null, usableRightOffsetM: null }
        : station,
    );
    const root = draw({ ...base, bench: { ...base.bench!, stations } });
    expect(ofClass(root, 'path', 'edge', 'none')[0]!.getAttribute('stroke-dasharray')).toBeTruthy();
    expect(ofClass(root, 'g', 'mark-tree')).toHaveLength(1);
  });

  it('writes of a long line only what reaches into the view', () => {
    const line = Array.from({ length: 20_001 }, (_value, i) => {
      const { lon, lat } = positionAt((i - 10_000) / 4, -20);
      return [lon, lat];
    });
    const water = {
      id: 'w',
      kind: 'water' as const,
      name: 'Long Creek',
      geometry: { type: 'LineString' as const, coordinates: line },
    };
    const path = ofClass(draw(studyWithLayouts({ marks: [water] })), 'path', 'water-line')[0]!;
    const points = coordinates(path);
    expect(points.length / 2).toBeLessThan(600);
    const ys = points.filter((_value, i) => i % 2 === 1);
    expect(Math.min(...ys)).toBeLessThanOrEqual(8);
    expect(Math.max(...ys)).toBeGreaterThanOrEqual(620 - 48);
  });
});
