import type { LonLat } from '../geo/index.ts';
import type { Study, StudyLayout, StudySpot } from '../study/index.ts';
import { toRadians } from '../units/index.ts';
import { offsetBy } from './offset.ts';

/** One apparatus in plan, WGS 84: its outline from the rear left corner round, and the line behind its cab. */
export interface SpotShape {
  readonly id: string;
  readonly words: string;
  readonly chosen: boolean;
  readonly workable: boolean;
  readonly at: LonLat;
  readonly headingDeg: number;
  readonly outline: readonly LonLat[];
  readonly cab: readonly [LonLat, LonLat];
}

/** A chosen layout in plan, WGS 84. `anchors` are the ids that somebody may tap, with where the rope is tied. */
export interface LayoutShapes {
  readonly spots: readonly SpotShape[];
  readonly main: readonly LonLat[];
  readonly belay: readonly LonLat[];
  readonly hand: readonly LonLat[];
  readonly field: readonly [LonLat, LonLat];
  readonly haulFieldM: number;
  readonly keepOut: readonly (readonly LonLat[])[];
  readonly anchors: readonly { readonly id: string; readonly words: string; readonly at: LonLat }[];
  /** Where the map has symbols of marks, which labels keep off. */
  readonly marks: readonly LonLat[];
}

/** Share of an apparatus's length that its cab takes in the drawing. */
const CAB_SHARE = 0.3;

/** What of a study's layout is drawn on the map: the spots that it uses and those that are pinned, ropes, haul field, keep-out. */
export function layoutShapes(study: Study, layoutId: string | null): LayoutShapes | null {
  const layout = study.layouts.find(({ id }) => id === layoutId) ?? null;
  const used = new Set(layout ? idsOf(layout) : []);
  const spots = study.spots.filter(({ id, pinned }) => used.has(id) || pinned).map((spot) => spotShape(spot, used));
  const marks = pointsOf(study);
  if (!layout) return spots.length > 0 ? { ...nothing, spots, marks } : null;
  const { edge, turn, anchor, belayAnchor, handTurn } = layout.points;
  const down = study.descent ? [study.descent.end] : [];
  return {
    spots,
    main: [...down, edge, ...(turn ? [turn] : []), anchor],
    belay: [...down, edge, belayAnchor],
    hand: handTurn ? [anchor, handTurn] : [],
    field: [turn ?? edge, anchor],
    haulFieldM: layout.haulFieldM,
    keepOut: ringsOf(layout),
    anchors: anchorsOf(study, layout),
    marks,
  };
}

const nothing = {
  main: [],
  belay: [],
  hand: [],
  field: [
    { lon: 0, lat: 0 },
    { lon: 0, lat: 0 },
  ],
  haulFieldM: 0,
  keepOut: [],
  anchors: [],
} as const;

const idsOf = ({ anchor, turn, lines }: StudyLayout): string[] =>
  [anchor, turn, lines.belay.anchor, lines.hand?.anchor].filter((id) => id !== null && id !== undefined);

function spotShape(spot: StudySpot, used: ReadonlySet<string>): SpotShape {
  const { id, apparatus, headingDeg, lengthM, widthM, workable } = spot;
  const at = { lon: spot.lon, lat: spot.lat };
  const [east, north] = [Math.sin(toRadians(headingDeg)), Math.cos(toRadians(headingDeg))];
  const corner = (ahead: number, right: number): LonLat =>
    offsetBy(at, ahead * east + right * north, ahead * north - right * east);
  const [half, side] = [lengthM / 2, widthM / 2];
  const cab = half - CAB_SHARE * lengthM;
  return {
    id,
    words: apparatus,
    chosen: used.has(id),
    workable,
    at,
    headingDeg,
    outline: [corner(-half, -side), corner(half, -side), corner(half, side), corner(-half, side)],
    cab: [corner(cab, -side), corner(cab, side)],
  };
}

/** Outer rings of the keep-out, whatever kind of area it is. */
function ringsOf({ keepOut }: StudyLayout): LonLat[][] {
  const rings =
    keepOut.type === 'Polygon'
      ? [keepOut.coordinates[0]!]
      : keepOut.type === 'MultiPolygon'
        ? keepOut.coordinates.map((polygon) => polygon[0]!)
        : [];
  return rings.map((ring) => ring.map(([lon, lat]) => ({ lon: lon!, lat: lat! })));
}

const pointsOf = ({ marks }: Study): LonLat[] =>
  marks.flatMap(({ geometry }) =>
    geometry.type === 'Point' ? [{ lon: geometry.coordinates[0]!, lat: geometry.coordinates[1]! }] : [],
  );

function anchorsOf({ spots, marks }: Study, layout: StudyLayout): LayoutShapes['anchors'] {
  const { anchor, turn, belayAnchor, handTurn } = layout.points;
  const { lines } = layout;
  const told = (id: string | null | undefined, at: LonLat | null, use: string) => {
    if (!id || !at) return [];
    const spot = spots.find((one) => one.id === id);
    const mark = marks.find((one) => one.id === id);
    const what = spot?.apparatus ?? (mark ? (mark.name ?? mark.kind) : id);
    return [{ id, words: `${what}, ${use}`, at }];
  };
  return [
    ...told(layout.anchor, anchor, 'anchor'),
    ...told(layout.turn, turn, 'turn'),
    ...told(lines.belay.anchor, belayAnchor, 'belay anchor'),
    ...told(lines.hand?.anchor, handTurn, 'turn of the hauling end'),
  ];
}
