import { changedSince, type EventRecord } from '../book/index.ts';
import type { Descent } from '../descent/index.ts';
import { type Bench, edgeKindAt } from '../road/index.ts';
import { findLayouts, type LayoutRoom, type Layouts, roadAzimuthDeg } from '../spots/index.ts';
import { isScreeningOnly } from '../terrain/index.ts';
import { azimuthOf, compassWord, normaliseAzimuth } from '../units/index.ts';
import { arrivingPart } from './arriving-part.ts';
import { benchPart } from './bench-part.ts';
import { benchWarnings } from './bench-warnings.ts';
import { callPart } from './call-part.ts';
import { closurePart } from './closure-part.ts';
import { anglePart, descentPart, positionOf, profilePart } from './descent-part.ts';
import { descentWarnings } from './descent-warnings.ts';
import { draftStations, type Led } from './draft-stations.ts';
import {
  clearRoad,
  edgeOut,
  type FieldInputs,
  fieldPart,
  fieldStateWarnings,
  readingWarnings,
  tapedStraight,
} from './field/index.ts';
import { standUp } from './ground-work.ts';
import type { StudyInputs } from './inputs.ts';
import { layoutPart } from './layout-part.ts';
import { layoutWarnings } from './layout-warnings.ts';
import { marksNear } from './marks-part.ts';
import { originsOf } from './origins.ts';
import { reliefPart } from './relief-part.ts';
import { degrees, lonLatDegrees, metres } from './rounded.ts';
import { sightWarnings } from './sight-warnings.ts';
import { sideWords } from './site-words.ts';
import { spotParts } from './spot-part.ts';
import type { Study, StudyEdge, StudyReading, StudyWarning } from './study.ts';
import { terrainPart } from './terrain-part.ts';
import { terrainWarnings } from './terrain-warnings.ts';
import { waysPart } from './ways-part.ts';
import { studySentence } from './words/index.ts';
import type { GroundWork } from './work.ts';

/**
 * The rest of a study on ground worked out before: layouts, ways, people, words. Nothing is cut again; where the conditions or
 * the fleet differ from those of the ground work, the places to stand are sought again. `at`, `side`, `patient`, `marks`,
 * `roads` and `rule` are those of the ground work. Throws a `UserError` on a pin that names no spot, mark or apparatus.
 */
export function completeStudy(given: GroundWork, inputs: StudyInputs): Study {
  const work = standUp(given, inputs);
  return composed(work, inputs, haulsOf(work, inputs), true);
}

/**
 * A study for a point that moves, a part of the work: edge, descent, profile, angle and class are those of the complete study.
 * Layouts are sought at some stations and bends alone: each is worked out as in the complete study, none is better than its best, and
 * the sentence says that a better one may come. Where none is found, there are no ways, and it says that hauls are still sought.
 * Nothing to keep, print or sign.
 */
export function draftStudy(given: GroundWork, inputs: StudyInputs, led: Led | null): Study {
  const { id } = given.inputs.roads.network.ways[given.place.way];
  const work = standUp(given, inputs, draftStations(id, given.place.stationM, led));
  return composed(work, inputs, haulsOf(work, inputs, true), false);
}

interface Hauls {
  readonly found: Layouts | null;
  readonly taped: ReturnType<typeof tapedStraight>;
}

function haulsOf(work: GroundWork, inputs: StudyInputs, draft = false): Hauls {
  const { descent } = work.side;
  const free = descent ? layoutsOf(work, descent, inputs, {}, draft) : null;
  const taped = tapedStraight(work, free);
  const limited = taped?.counts.how === 'measured' && !taped.counts.betters;
  const room = limited ? { straightM: taped.counts.value! } : {};
  return { found: limited && descent ? layoutsOf(work, descent, inputs, room, draft) : free, taped };
}

/** The study of a ground work and its hauls; `whole` where they were sought to the end. */
function composed(work: GroundWork, inputs: StudyInputs, { found, taped }: Hauls, whole: boolean): Study {
  const { ground, bench, i, side, place, structure, traits } = work;
  const { descent, used, info } = side;
  const { plane } = ground;
  const { units, resources, pins, conditions, patients } = inputs;
  const field = fieldPart([...(work.field?.quantities ?? []), ...(taped ? [taped] : [])]);
  const first = found?.layouts[0] ?? null;
  const layouts = found?.layouts.map((layout) => layoutPart(layout, plane)) ?? [];
  const spots = found ? spotParts(found, work.standing!.fleet, pins, plane, whole) : [];
  const closure = first ? closurePart(work, first.lanesBlocked) : null;
  const marks = marksNear(work.inputs, descent?.line.start ?? origin, descent?.line.end ?? origin);
  const sign = side.side === 'right' ? 1 : -1;
  const own = side.side === 'right' ? bench.right : bench.left;
  const far = side.side === 'right' ? bench.left : bench.right;
  const sideAzimuthDeg = azimuthOf(sign * bench.normalX[i], sign * bench.normalY[i]);
  const kind = edgeKindAt(own, i);
  const words = sideWords(sideAzimuthDeg, kind === 'rise' ? false : kind === 'none' ? null : true);
  const above = far.above[i];
  const way = work.inputs.roads.network.ways[place.way];
  const roadDeg = roadAzimuthDeg(bench, i);
  const from = { before: compassWord(normaliseAzimuth(roadDeg + 180)), after: compassWord(roadDeg) };
  const warnings: StudyWarning[] = [
    ...(descent ? descentWarnings(descent, units) : []),
    ...benchWarnings(bench, i, { side: side.side, words, kind, units }),
    ...terrainWarnings(info, isScreeningOnly(info), work.doubted, units),
    ...(work.bothDrop ? [bothSides(words)] : []),
    ...readingWarnings(field, units),
    ...(inputs.field ? fieldStateWarnings(inputs.field, sinceSurvey(work, inputs.field)) : []),
    ...(descent && !structure ? sightWarnings(closure ?? closurePart(work, 0), from, units) : []),
    ...layoutWarnings({
      ...{ found, layouts, spots, units },
      shipped: resources.how === 'shipped',
      nobody: resources.arrivals.length === 0,
      high: descent?.angle?.planAs === 'high',
    }),
  ];
  const study: Omit<Study, 'sentence'> = {
    schema: 'brinkbook/study@1',
    site: {
      lon: lonLatDegrees(work.inputs.at.lon),
      lat: lonLatDegrees(work.inputs.at.lat),
      side: side.side,
      sideAzimuthDeg: degrees(sideAzimuthDeg),
      sideWords: words,
      road: { id: way.id, name: way.name, stationM: metres(place.stationM) },
    },
    given: {
      conditions: { wet: conditions.wet, ice: conditions.ice, night: conditions.night, wind: conditions.wind },
      patients,
      resources: resources.how,
    },
    terrain: terrainPart(ground, used),
    check: inputs.field?.check ?? null,
    field,
    bench: structure ? null : benchPart(bench, i, traits, plane),
    above: above && !structure ? { angleDeg: aboveDeg(field, above.angleDeg), heightM: metres(above.heightM) } : null,
    edge: descent ? edgePart(work, descent) : null,
    descent: descent ? descentPart(descent, plane) : null,
    profile: descent ? profilePart(descent) : null,
    // Nothing that follows a moved point draws contours.
    relief: structure || !whole ? null : reliefPart(work, sideAzimuthDeg),
    angle: descent?.angle ? anglePart(descent.angle, descent.nearbyMaxDeg, descent.meanDeg) : null,
    spots,
    layouts,
    ways: found && descent && (whole || first) ? waysPart(work, descent, found.layouts, closure, inputs) : [],
    closure,
    arriving: arrivingPart(resources),
    call: descent
      ? callPart({ planAs: descent.angle?.planAs ?? null, descent, layout: first, closure, marks, resources })
      : [],
    marks: marks.map(({ id, kind: what, name, geometry }) => ({ id, kind: what, name, geometry })),
    origins: {},
    warnings: warnings.sort((a, b) => severityRank[a.severity] - severityRank[b.severity]),
  };
  study.origins = originsOf(study, bench.how, bench.rule);
  return { ...study, sentence: studySentence(study, units, whole) };
}

const origin = { x: 0, y: 0 };
const severityRank = { stop: 0, check: 1, note: 2 } as const;

/** The slope above as read, where the reading counts. */
function aboveDeg(field: readonly StudyReading[], computedDeg: number): number {
  const read = field.find(({ quantity, used }) => quantity === 'slopeAboveDeg' && used === 'measured');
  return read ? read.measured : degrees(computedDeg);
}

/** Events at the site that nobody has been there after. */
function sinceSurvey({ inputs, ground, side, place }: GroundWork, { inFieldOn }: FieldInputs): readonly EventRecord[] {
  const { line } = side.descent ?? {};
  const path = [
    inputs.at,
    place.position,
    ...(line ? [line.start, line.end].map((at) => ground.plane.toLonLat(at)) : []),
  ];
  return changedSince(path, inputs.events ?? [], inFieldOn, null).sinceSurvey;
}

function layoutsOf(
  work: GroundWork,
  descent: Descent,
  inputs: StudyInputs,
  room: LayoutRoom,
  draft: boolean,
): Layouts | null {
  const { standing, ground } = work;
  if (!standing || !descent.angle) return null;
  const { arrivals, kits, rates, fullBelay } = inputs.resources;
  return findLayouts({
    ground: standing.ground,
    fleet: standing.fleet,
    spots: standing.spots,
    marks: work.inputs.marks,
    plane: ground.plane,
    patients: inputs.patients,
    pins: inputs.pins,
    screeningOnly: isScreeningOnly(work.side.info),
    edgeNearerM: Math.max(0, (edgeOut({ ...work, bench: work.computedBench }) ?? 0) - (edgeOut(work) ?? 0)),
    room: { ...clearRoad(work), ...room },
    ...{ descent, arrivals, kits, rates, fullBelay: fullBelay ?? false, draft },
  });
}

const bothSides = (words: string): StudyWarning => ({
  code: 'both-sides',
  severity: 'check',
  text: `The ground drops on both sides of the road; this is the ${words}.`,
});

/** The edge where the descent starts: at the station, or above the patient point. */
function edgePart({ ground, bench, i, side }: GroundWork, descent: Descent): StudyEdge {
  const own = ownSide(bench, side.side);
  const { start } = descent.line;
  const offsetM = (start.x - bench.x[i]) * bench.normalX[i] + (start.y - bench.y[i]) * bench.normalY[i];
  const moved = Math.hypot(start.x - own.edgeX[i], start.y - own.edgeY[i]) > 0.01;
  return {
    ...positionOf(ground.plane, start.x, start.y),
    elevationM: metres(descent.profile.elevationM[0]),
    offsetM: metres(moved ? offsetM : own.edgeOffsetM[i]),
    offsetSigmaM: metres(own.sigmaM[i]),
    firmOffsetM: metres(own.firmOffsetM[i]),
    lipAngleDeg: degrees(descent.lipAngleDeg),
  };
}

const ownSide = (bench: Bench, side: 'left' | 'right') => (side === 'right' ? bench.right : bench.left);
