import type { Bench, BenchNote, EdgeKind } from '../road/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyWarning } from './study.ts';

/** Notes on the road this near the site are told, metres along it. */
const NEAR_M = 15;

interface SiteSide {
  readonly side: 'left' | 'right';
  readonly words: string;
  readonly kind: EdgeKind;
  readonly units: UnitSystem;
}

/** What a crew must be told of the road bench at station index `i`: of the site's own side, the other side, the road. */
export function benchWarnings(bench: Bench, i: number, site: SiteSide): StudyWarning[] {
  const stationM = bench.firstStationM + i;
  const sign = site.side === 'right' ? 1 : -1;
  const list: StudyWarning[] = [];
  if (bench.how === 'assumed') {
    list.push({
      code: 'bench-assumed',
      severity: 'check',
      text: `The cells are too coarse to show the road bench: its edges are assumed from ${bench.rule}.`,
    });
  }
  const told = new Set<string>();
  for (const note of bench.notes) {
    const reach = note.code === 'structure' ? 0 : NEAR_M;
    if (stationM < note.fromM - reach || stationM > note.toM + reach) continue;
    const warning = warningOf(note, sign, site);
    if (!warning || told.has(warning.code)) continue;
    // Ground under a structure says nothing of the road line.
    if (warning.code === 'line-shift' && told.has('structure')) continue;
    told.add(warning.code);
    list.push(warning);
  }
  if (site.kind !== 'drop' && !told.has('structure')) list.push(noEdge(bench, i, site));
  return list;
}

function warningOf(note: BenchNote, sign: 1 | -1, { units, kind }: SiteSide): StudyWarning | null {
  const length = (m: number): string => formatLength(Math.abs(m), units);
  const own = note.side === 0 || note.side === sign;
  const [a, b] = note.values;
  const say = (severity: StudyWarning['severity'], text: string): StudyWarning => ({ code: note.code, severity, text });
  switch (note.code) {
    case 'structure':
      return say(
        'stop',
        'Not computed: structure. The road is on a bridge or in a tunnel here, where elevation data do not show it.',
      );
    case 'no-ground':
      return say('check', 'The elevation data have holes in the road near this site.');
    case 'line-shift':
      return say('check', `Road line ${length(a)} off the road found: check that it is the same road.`);
    case 'two-benches':
      return say(
        'check',
        `Another level strip lies ${length(a)} beside the road line, ${length(b)} ${b < 0 ? 'lower' : 'higher'}: check that the right one was measured.`,
      );
    case 'culvert':
      return say('check', 'A trench crosses the road here, as left over a culvert: the bench is bridged across it.');
    case 'through-fill':
      return say('check', 'The road runs on a fill with a drop on both sides: there is no "behind".');
    case 'ditch':
      return own && kind !== 'drop' ? say('note', `Ditch from ${length(a)} off the road line; firm to there.`) : null;
    case 'soft-shoulder':
      return own
        ? say('check', `Soft shoulder: the ground is steeper than 12 % for the last ${length(a)} before the edge.`)
        : null;
    case 'bank-at-edge':
      return own
        ? say('check', `A bank of ${length(a)} stands at the edge, edge uncertain behind it: stand before the bank.`)
        : null;
    case 'drop-behind-bank':
      return own ? say('check', `The ground falls by ${length(a)} behind the bank beside the road.`) : null;
    case 'track-leaves':
      return own
        ? say('check', `A track leaves here: the edge jumps from ${length(a)} to ${length(b)}; stand on the inner one.`)
        : null;
    case 'side-changes':
      return own ? say('check', 'The side slope changes here from cut to fill: edge uncertain.') : null;
    case 'slope-above':
      return note.side === -sign || note.side === 0
        ? say(
            'check',
            `Slope above the road on the other side, near here up to ${formatDegrees(a)} and ${length(b)} high. Look up: what can come down on the crew?`,
          )
        : null;
    case 'bank':
      return own && kind !== 'bank' ? say('note', `A bank of ${length(a)} at ${formatDegrees(b)} lies near.`) : null;
    default:
      return null;
  }
}

function noEdge(bench: Bench, i: number, { side, words, kind, units }: SiteSide): StudyWarning {
  const own = side === 'right' ? bench.right : bench.left;
  const length = (m: number): string => formatLength(Math.abs(m), units);
  const head = `No drop edge on the ${words}`;
  const slope = Math.round(100 * Math.abs(own.outerSlope[i]));
  const text =
    kind === 'bank'
      ? `${head}: bank of ${length(own.fallM[i])} at ${slope} %.`
      : kind === 'rise'
        ? `${head}: the ground rises there.`
        : bench.how === 'assumed'
          ? `${head}: cells this coarse show none, which does not say that there is none.`
          : Number.isFinite(own.usableOffsetM[i])
            ? `${head}: the ground stays level for ${length(own.usableOffsetM[i] - bench.shiftM[i])} and more.`
            : `${head}: none was found in the elevation data.`;
  return { code: 'no-edge', severity: 'check', text };
}
