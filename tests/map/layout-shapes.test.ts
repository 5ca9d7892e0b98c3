import { expect, test } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { layoutShapes } from '../../src/map/layout-shapes.ts';
import type { Study, StudyLayout, StudySpot } from '../../src/study/index.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const at = { lon: -128, lat: 44 };
const plane = localPlane(at);
const place = (x: number, y: number) => plane.toLonLat({ x, y });

const spot = (id: string, change: Partial<StudySpot> = {}): StudySpot => ({
  ...{ id, apparatus: 'Engine 1', lengthM: 9, widthM: 2.5, headingDeg: 30, stationM: 0, offsetM: 0 },
  ...{ gradeDeg: 0, crossfallDeg: 0, edgeClearanceM: 3, lanesBlocked: 1, holdKn: 20, use: 'anchor', problems: [] },
  ...{ workable: true, pinned: false, ...at },
  ...change,
});

const layout = {
  id: 'L1',
  anchor: 'S:a',
  turn: 'S:t',
  points: { edge: place(0, 0), turn: place(0, 3), anchor: place(20, 4), belayAnchor: place(-5, 6), handTurn: null },
  lines: { main: {}, belay: { anchor: 'T9' }, hand: null },
  haulFieldM: 20.02,
  keepOut: {
    type: 'MultiPolygon',
    coordinates: [
      [
        [
          [-128, 44],
          [-127.999, 44],
          [-128, 44.001],
          [-128, 44],
        ],
      ],
      [
        [
          [-128, 44],
          [-128.001, 44],
          [-128, 44.001],
          [-128, 44],
        ],
      ],
    ],
  },
} as unknown as StudyLayout;

const study: Study = studyFixture({
  spots: [
    spot('S:a'),
    spot('S:t', { apparatus: 'Engine 2' }),
    spot('S:x'),
    spot('S:p', { pinned: true, workable: false }),
  ],
  layouts: [layout],
  marks: [{ id: 'T9', kind: 'tree', name: null, geometry: { type: 'Point', coordinates: [-128, 44] } }],
});

test('an apparatus is drawn in its true size and heading, to a centimetre', () => {
  const [first] = layoutShapes(study, 'L1')!.spots;
  const corners = first!.outline.map((one) => plane.toLocal(one));
  const [rearLeft, frontLeft, frontRight] = corners as [
    { x: number; y: number },
    { x: number; y: number },
    { x: number; y: number },
  ];
  expect(Math.abs(Math.hypot(frontLeft.x - rearLeft.x, frontLeft.y - rearLeft.y) - 9)).toBeLessThan(0.02);
  expect(Math.abs(Math.hypot(frontRight.x - frontLeft.x, frontRight.y - frontLeft.y) - 2.5)).toBeLessThan(0.01);
  const heading = (Math.atan2(frontLeft.x - rearLeft.x, frontLeft.y - rearLeft.y) * 180) / Math.PI;
  expect(Math.abs(heading - 30)).toBeLessThan(0.2);
});

test('the chosen layout shows what it uses and what is pinned; ropes run from the end over edge and turn to the anchor', () => {
  const shapes = layoutShapes(study, 'L1')!;
  expect(shapes.spots.map(({ id, chosen, workable }) => [id, chosen, workable])).toEqual([
    ['S:a', true, true],
    ['S:t', true, true],
    ['S:p', false, false],
  ]);
  const { points } = layout;
  expect(shapes.main).toEqual([study.descent!.end, points.edge, points.turn, points.anchor]);
  expect(shapes.belay).toEqual([study.descent!.end, points.edge, points.belayAnchor]);
  expect(shapes.field).toEqual([points.turn, points.anchor]);
  expect(shapes.keepOut).toHaveLength(2);
  expect(shapes.anchors.map(({ words }) => words)).toEqual([
    'Engine 1, anchor',
    'Engine 2, turn',
    'tree, belay anchor',
  ]);
});

test('without a layout only pinned spots stay, and nothing where there are none', () => {
  expect(layoutShapes(study, null)!.spots.map(({ id }) => id)).toEqual(['S:p']);
  expect(layoutShapes({ ...study, spots: [] }, 'gone')).toBeNull();
});
