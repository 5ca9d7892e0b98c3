import type { AngleRule, Mark } from '../book/index.ts';
import type { Descent } from '../descent/index.ts';
import type { LonLat } from '../geo/index.ts';
import {
  type Bench,
  benchAround,
  edgeKindAt,
  type RoadIndex,
  type RoadPlace,
  readRoadTags,
  roadAt,
} from '../road/index.ts';
import { type Ground, isScreeningOnly } from '../terrain/index.ts';
import { azimuthOf, ok, type Result, type UnitSystem } from '../units/index.ts';
import { benchPart } from './bench-part.ts';
import { benchWarnings } from './bench-warnings.ts';
import { anglePart, descentPart, positionOf, profilePart } from './descent-part.ts';
import { descentWarnings } from './descent-warnings.ts';
import { withLikelyKind } from './likely-kind.ts';
import { originsOf } from './origins.ts';
import { degrees, lonLatDegrees, metres } from './rounded.ts';
import { studySentence } from './sentence.ts';
import { type Side, type SideWork, workUpSide } from './side.ts';
import { sideWords } from './site-words.ts';
import type { Study, StudyEdge, StudyWarning } from './study.ts';
import { terrainPart } from './terrain-part.ts';
import { terrainWarnings } from './terrain-warnings.ts';

/** What a study is made from; the same inputs always give the same study. */
export interface StudyInputs {
  /** Ground around the site on a plane centred there; what it lacks, the files lack. */
  readonly ground: Ground;
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  /** A point beside a road. */
  readonly at: LonLat;
  /** Side of the road line as drawn, or null for the side that drops. */
  readonly side: Side | null;
  readonly patient: LonLat | null;
  readonly rule: AngleRule;
  readonly units: UnitSystem;
}

/** Works out one site. Refuses where no road lies within 50 m or the ground has no data at the road. */
export function runStudy(inputs: StudyInputs): Result<Study> {
  const place = roadAt(inputs.roads, inputs.at);
  if (!place.ok) return place;
  const found = benchAround(inputs.roads, place.value, inputs.ground, inputs.marks);
  if (!found.ok) return found;
  const bench = found.value;
  const i = stationIndex(bench, place.value);
  const { ground, doubted } = withLikelyKind(inputs.ground, bench, i);
  const taken = { ...inputs, ground };
  const patientSide = inputs.patient ? sideOf(bench, i, inputs) : null;
  const named = inputs.side ?? patientSide;
  const works = (named ? [named] : (['left', 'right'] as const)).map((side) =>
    workUpSide(taken, bench, place.value, i, side),
  );
  const both = works.length > 1 && works.every((work) => work.descent);
  const chosen = works.reduce((best, work) => (isWorse(work, best) ? work : best));
  return ok(toStudy(taken, place.value, bench, i, chosen, { bothDrop: both, doubted }));
}

function stationIndex(bench: Bench, place: RoadPlace): number {
  const i = Math.round(place.stationM) - bench.firstStationM;
  return Math.min(bench.count - 1, Math.max(0, i));
}

/** The side of the road on which the patient point lies. */
function sideOf(bench: Bench, i: number, { ground, patient }: StudyInputs): Side {
  const { x, y } = ground.plane.toLocal(patient!);
  const right = (x - bench.x[i]) * bench.normalX[i] + (y - bench.y[i]) * bench.normalY[i];
  return right >= 0 ? 'right' : 'left';
}

/** The side to plan for where none was named: the one with the higher `planAs`, then the larger drop. */
function isWorse(a: SideWork, b: SideWork): boolean {
  if (a === b) return false;
  const rank = (work: SideWork): number =>
    work.descent ? 1 + ['low', 'steep', 'high'].indexOf(work.descent.angle?.planAs ?? 'low') : 0;
  if (rank(a) !== rank(b)) return rank(a) > rank(b);
  return (a.descent?.dropM ?? 0) > (b.descent?.dropM ?? 0);
}

function toStudy(
  inputs: StudyInputs,
  place: RoadPlace,
  bench: Bench,
  i: number,
  work: SideWork,
  { bothDrop, doubted }: { bothDrop: boolean; doubted: boolean },
): Study {
  const { ground, units } = inputs;
  const { side, descent, used, info } = work;
  const { plane } = ground;
  const sign = side === 'right' ? 1 : -1;
  const own = side === 'right' ? bench.right : bench.left;
  const far = side === 'right' ? bench.left : bench.right;
  const sideAzimuthDeg = azimuthOf(sign * bench.normalX[i], sign * bench.normalY[i]);
  const kind = edgeKindAt(own, i);
  const words = sideWords(sideAzimuthDeg, kind === 'rise' ? false : kind === 'none' ? null : true);
  const structure = bench.notes.find((note) => note.code === 'structure' && covers(note, bench.firstStationM + i));
  const above = far.above[i];
  const warnings: StudyWarning[] = [
    ...(descent ? descentWarnings(descent, units) : []),
    ...benchWarnings(bench, i, { side, words, kind, units }),
    ...terrainWarnings(info, isScreeningOnly(info), doubted, units),
  ];
  if (bothDrop) {
    warnings.push({
      code: 'both-sides',
      severity: 'check',
      text: `The ground drops on both sides of the road; this is the ${words}.`,
    });
  }
  const way = inputs.roads.network.ways[place.way];
  const study: Omit<Study, 'sentence'> = {
    schema: 'brinkbook/study@1',
    site: {
      lon: lonLatDegrees(inputs.at.lon),
      lat: lonLatDegrees(inputs.at.lat),
      side,
      sideAzimuthDeg: degrees(sideAzimuthDeg),
      sideWords: words,
      road: { id: way.id, name: way.name, stationM: metres(place.stationM) },
    },
    terrain: terrainPart(ground, used),
    check: null,
    bench: structure ? null : benchPart(bench, i, readRoadTags(way.tags), plane),
    above: above && !structure ? { angleDeg: degrees(above.angleDeg), heightM: metres(above.heightM) } : null,
    edge: descent ? edgePart(inputs, bench, i, work, descent) : null,
    descent: descent ? descentPart(descent, plane) : null,
    profile: descent ? profilePart(descent) : null,
    angle: descent?.angle ? anglePart(descent.angle, descent.nearbyMaxDeg, descent.meanDeg) : null,
    spots: [],
    layouts: [],
    ways: [],
    closure: null,
    arriving: [],
    call: [],
    marks: [],
    origins: {},
    warnings: warnings.sort((a, b) => severityRank[a.severity] - severityRank[b.severity]),
  };
  study.origins = originsOf(study, bench.how, bench.rule);
  return { ...study, sentence: studySentence(study, units) };
}

const severityRank = { stop: 0, check: 1, note: 2 } as const;

const covers = (note: { fromM: number; toM: number }, stationM: number): boolean =>
  stationM >= note.fromM && stationM <= note.toM;

/** The edge where the descent starts: at the station, or above the patient point. */
function edgePart({ ground }: StudyInputs, bench: Bench, i: number, work: SideWork, descent: Descent): StudyEdge {
  const own = work.side === 'right' ? bench.right : bench.left;
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
