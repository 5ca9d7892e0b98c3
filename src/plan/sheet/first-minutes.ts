import { LOOSE_ABOVE } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';
import { compassWord, formatDegrees, formatLength, normaliseAzimuth, type UnitSystem } from '../../units/index.ts';
import { approaches, sightWords } from './approach.ts';

/** Apparatus that is no part of a layout stays this far to the side of the descent, metres [source: practice]. */
const ASIDE_M = 10;

/** Nobody untied comes nearer to the edge than this; whole units, a metre rounded up [source: practice]. */
const UNTIED = { us: '4 ft', metric: '1 m' } as const;

/**
 * The first five minutes in order: approach end, where the blocking vehicle stands for the sight distance, lanes to close, look
 * up, then the edge. Planned as high the first crew does no more than this. What is needed is rounded up, what is there down.
 */
export function firstMinutes(study: Study, units: UnitSystem): string[] {
  const high = study.angle?.planAs === 'high';
  return [
    high ? null : approachWords(study, units),
    sightWarning(study, units),
    blockWords(study, units),
    laneWords(study),
    lookUp(study, units),
    edgeWords(study, units),
    high ? voiceWords(study, units) : null,
  ].filter((words) => words !== null);
}

/** From where the first apparatus comes, so that it ends nose first on its spot. */
function approachWords({ layouts, spots, arriving }: Study, units: UnitSystem): string | null {
  const [first] = layouts;
  if (!first) return null;
  const minute = (apparatus: string): number =>
    Math.min(...arriving.filter((one) => one.apparatus === apparatus).map(({ atMin }) => atMin), 999);
  const stands = spots
    .filter(({ id }) => id === first.turn || id === first.anchor)
    .sort((a, b) => minute(a.apparatus) - minute(b.apparatus));
  const [spot] = stands;
  if (!spot) return null;
  const part = spot.id === first.turn ? 'at the turn' : 'as anchor';
  const wheels =
    spot.edgeClearanceM === null
      ? ''
      : `, outer wheels ${formatLength(spot.edgeClearanceM, units, 'down')} from the edge`;
  return `${spot.apparatus} comes in from the ${compassWord(normaliseAzimuth(spot.headingDeg + 180))}, stands ${part}, nose ${compassWord(spot.headingDeg)}${wheels}.`;
}

/** Every end with too little sight is warned, the worst first. */
function sightWarning(study: Study, units: UnitSystem): string | null {
  const { closure } = study;
  const ends = approaches(study);
  if (!closure || ends.length === 0) return null;
  const need = formatLength(closure.stoppingSightM, units, 'up');
  const posted = closure.speed.how === 'typed' ? '' : ' assumed';
  const takes = `stopping at ${closure.speed.mph} mph${posted} takes`;
  const short = ends.filter((end) => end.short);
  if (short.length === 0) return `Warn traffic both ways, ${need} out: ${takes} that; sight here is longer.`;
  const from = short.map((end) => `from the ${end.from}`).join(', then ');
  const seen = short.map((end) => sightWords(end.sightM, units)).join(' and ');
  return `Warn traffic ${from}${short.length > 1 ? '' : ' first'}, ${need} out: sight ${seen}, ${takes} ${need}.`;
}

/**
 * Where the vehicle that blocks stands, one at every end with too little sight. Drivers who see the site over the sight distance must
 * meet it at the stopping distance, so it stands the difference farther out, and never inside the room beside the descent. [source: derived]
 */
function blockWords(study: Study, units: UnitSystem): string | null {
  const { closure } = study;
  if (!closure)
    return `Blocking vehicle at least ${formatLength(ASIDE_M, units, 'up')} to the side; sight here was not worked out, warn traffic far out.`;
  const need = formatLength(closure.stoppingSightM, units, 'up');
  const out = (sightM: number | null): string =>
    formatLength(Math.max(ASIDE_M, closure.stoppingSightM - (sightM ?? 0)), units, 'up');
  const ends = approaches(study);
  const stands = ends
    .filter(({ short }) => short)
    .map(({ from, sightM }) => `on the ${from} side, at least ${out(sightM)} from the descent`);
  const [worst] = ends;
  if (stands.length === 0)
    stands.push(`at least ${worst ? out(worst.sightM) : formatLength(ASIDE_M, units, 'up')} from the descent`);
  return `Blocking vehicle ${stands.join('; another ')}, where drivers see it from ${need}.`;
}

function laneWords({ closure, angle, edge, bench }: Study): string | null {
  if (angle?.planAs === 'high') return 'Close the road both ways for any work at the edge.';
  if (!closure) return `Traffic: close the lane${bench ? '' : 's'} beside the ${edge ? 'edge' : 'site'}.`;
  const lanes = `${closure.lanesBlocked} lane${closure.lanesBlocked === 1 ? '' : 's'}`;
  if (closure.kind === 'road closed') return 'Close the road both ways: the haul takes it.';
  if (closure.kind === 'one lane in turn') return `Close ${lanes}, traffic in turn.`;
  return closure.lanesBlocked > 0 ? `Close ${lanes}.` : 'The haul takes no lane; hold traffic while people cross.';
}

function lookUp({ above, marks }: Study, units: UnitSystem): string {
  const overhead = [...new Set(marks.map(({ kind }) => kind))].filter((kind) => kind === 'wire' || kind === 'pole');
  const wires = overhead.length > 0 ? ` ${overhead.includes('wire') ? 'Wires' : 'Poles'} here.` : '';
  if (!above) return `Look up: the slope above was not worked out.${wires}`;
  const figures = `slope above ${formatDegrees(above.angleDeg)}, ${formatLength(above.heightM, units, 'up')} high`;
  const steep = above.angleDeg > LOOSE_ABOVE.angleDeg && above.heightM > LOOSE_ABOVE.heightM;
  return `Look up: ${figures}${steep ? ', can send rock down; nobody under it' : ''}.${wires}`;
}

function edgeWords({ edge, bench, angle }: Study, units: UnitSystem): string {
  if (!edge && bench) return 'No drop edge was found on this side: look for one; nobody past one untied.';
  if (!edge) return 'The edge was not computed: find and mark it; nobody past it untied.';
  const width = bench?.widthM == null ? '' : ` Road bench ${formatLength(bench.widthM, units, 'down')}.`;
  const voice = angle?.planAs === 'high' ? '' : ' Voice contact, count patients.';
  return `Mark the edge; nobody within ${UNTIED[units]} of it untied.${width}${voice}`;
}

function voiceWords({ descent }: Study, units: UnitSystem): string {
  const lost =
    descent?.sightLostAtM == null ? '' : ` Out of sight from ${formatLength(descent.sightLostAtM, units, 'down')}.`;
  return `Voice contact from the edge: count patients, say that help is coming, note voice and movement.${lost}`;
}
