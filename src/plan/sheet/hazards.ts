import type { Geometry, Position } from 'geojson';
import type { Study, StudyMark } from '../../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { nameOf } from '../layout-label-texts.ts';
import { type PlanGround, planGround } from '../plan-ground.ts';

/** Marks farther than this from the edge and the descent are no matter of this site, metres. */
const NEAR_M = 60;

/** Hazards and marks in words: steps, edges that bend the rope, sight lost, then marks, the nearest first. */
export function hazards(study: Study, units: UnitSystem): string[] {
  const { descent } = study;
  const length = (m: number): string => formatLength(m, units);
  const steps = (descent?.steps ?? []).map(
    ({ distanceM, heightM }) => `Step about ${length(heightM)} at ${length(distanceM)} out: stop.`,
  );
  const bends = (descent?.contacts ?? []).map(({ distanceM, bendDeg }) => {
    const where = distanceM < 0.5 ? 'the edge' : `${length(distanceM)} out`;
    return `${where} (${formatDegrees(bendDeg)})`;
  });
  const lost = descent?.sightLostAtM;
  return [
    ...steps,
    ...(bends.length > 0 ? [`Edge protection where the rope bends: ${bends.join(', ')}.`] : []),
    ...(lost == null ? [] : [`Litter out of sight from ${formatLength(lost, units, 'down')} out: attendant to relay.`]),
    ...marksNear(study, units),
  ];
}

function marksNear(study: Study, units: UnitSystem): string[] {
  const ground = planGround(study);
  const end = study.descent?.horizontalM ?? 0;
  return study.marks
    .filter(({ kind }) => kind !== 'patient point')
    .map((mark) => ({ mark, ...nearest(mark, ground, end) }))
    .filter(({ awayM }) => awayM <= NEAR_M)
    .sort((a, b) => a.awayM - b.awayM || (a.mark.id < b.mark.id ? -1 : 1))
    .filter(({ mark }, i, all) => all.findIndex((other) => sameThing(other.mark, mark)) === i)
    .map(({ mark, along, aside }) => `${capital(nameOf(study, mark.id))}: ${placeWords(along, aside, units)}.`);
}

/** Pieces of one mapped line or area, such as a creek's, are told once, where they come nearest. */
const sameThing = (a: StudyMark, b: StudyMark): boolean =>
  a === b || (a.name !== null && a.name === b.name && a.kind === b.kind && a.geometry.type !== 'Point');

function nearest({ geometry }: StudyMark, ground: PlanGround, endM: number) {
  let best = { awayM: Number.POSITIVE_INFINITY, along: 0, aside: 0 };
  const take = (along: number, aside: number): void => {
    const off = Math.max(0, -along, along - endM);
    const awayM = Math.hypot(off, aside);
    if (awayM < best.awayM) best = { awayM, along, aside };
  };
  for (const line of linesOf(geometry)) {
    const placed = line.map(([lon = 0, lat = 0]) => ground.place({ lon, lat }));
    placed.forEach(([x, y], i) => {
      take(x, y);
      const after = placed[i + 1];
      if (!after) return;
      const steps = Math.min(400, Math.ceil(Math.hypot(after[0] - x, after[1] - y)));
      for (let k = 1; k < steps; k++) take(x + ((after[0] - x) * k) / steps, y + ((after[1] - y) * k) / steps);
    });
  }
  return best;
}

function linesOf(geometry: Geometry): Position[][] {
  switch (geometry.type) {
    case 'Point':
      return [[geometry.coordinates]];
    case 'LineString':
    case 'MultiPoint':
      return [geometry.coordinates];
    case 'Polygon':
    case 'MultiLineString':
      return geometry.coordinates;
    case 'MultiPolygon':
      return geometry.coordinates.flat();
    default:
      return [];
  }
}

/** "56 ft out, 12 ft to the right looking down", or "18 ft behind the edge". */
function placeWords(along: number, aside: number, units: UnitSystem): string {
  const out = `${formatLength(Math.abs(along), units)} ${along < 0 ? 'behind the edge' : 'out'}`;
  if (Math.abs(aside) < 1) return `${out}, on the line`;
  return `${out}, ${formatLength(Math.abs(aside), units)} ${aside > 0 ? 'right' : 'left'} looking down`;
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
