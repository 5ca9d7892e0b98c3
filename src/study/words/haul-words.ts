import { formatLength, type UnitSystem } from '../../units/index.ts';
import { noHaulReason } from '../no-haul-reasons.ts';
import type { Study, StudyLayout } from '../study.ts';
import { alongWords, fieldPlace } from './field-place.ts';

type Told = Omit<Study, 'sentence'>;

/** Straight hauls of more resets are not named: nobody works them. */
const MOST_RESETS = 10;

/** The first layout in a sentence: kind, advantage, field, resets, lanes, who stands where, what is not met. */
export function firstHaulWords(study: Told, units: UnitSystem): string {
  const layout = study.layouts[0]!;
  const field = formatLength(layout.haulFieldM, units, 'down');
  const head =
    layout.kind === 'turned'
      ? `Turned haul ${alongWords(study, layout)}, ${layout.mechanicalAdvantage}, ${field} ${fieldPlace(study, layout)}`
      : `Straight haul, ${layout.mechanicalAdvantage}, ${field} of room`;
  const work = [countWords(layout.resets, 'reset'), laneWords(study)].join(', ');
  return `${head}: ${work}; ${standWords(study, layout)}.${unmetWords(layout)}`;
}

/** The best haul of the other kind: its resets, or why there is none. */
export function otherHaulWords(study: Told, units: UnitSystem): string {
  const [first] = study.layouts;
  const kind = first!.kind === 'turned' ? 'straight' : 'turned';
  const other = study.layouts.find((layout) => layout.kind === kind);
  const name = kind === 'straight' ? 'Straight haul' : 'Turned haul';
  if (!other) return noHaulReason(study.warnings, kind);
  if (other.resets > MOST_RESETS) {
    return `${name} not practical: ${formatLength(other.haulFieldM, units, 'down')} of room.`;
  }
  const unmet = other.forces.some(({ ok }) => ok === 'no') ? ', a factor not met' : '';
  return `${name}: ${countWords(other.resets, 'reset')}${unmet}.`;
}

function laneWords({ closure }: Told): string {
  switch (closure!.kind) {
    case 'road closed':
      return 'road closed';
    case 'one lane in turn':
      return `${countWords(closure!.lanesBlocked, 'lane')} closed, traffic in turn`;
    case 'lane merged':
      return `${countWords(closure!.lanesBlocked, 'lane')} closed`;
    case 'shoulder':
      return 'no lane';
  }
}

/** Who stands where: "Engine 1 at the turn, Engine 2 (8 min) as anchor, belay on tree T3". */
function standWords(study: Told, { turn, anchor, lines }: StudyLayout): string {
  const parts = [...(turn ? [`${standName(study, turn)} at the turn`] : []), `${standName(study, anchor)} as anchor`];
  const belay = lines.belay.anchor;
  if (belay !== turn && belay !== anchor) parts.push(`belay on ${standName(study, belay)}`);
  return parts.join(', ');
}

/** An apparatus with its minute, or a marked tree or rock by its name. */
function standName({ spots, arriving, marks }: Told, id: string): string {
  const spot = spots.find((candidate) => candidate.id === id);
  if (spot) {
    const atMin = Math.min(...arriving.filter(({ apparatus }) => apparatus === spot.apparatus).map((a) => a.atMin));
    return atMin > 0 && Number.isFinite(atMin) ? `${spot.apparatus} (${atMin} min)` : spot.apparatus;
  }
  const mark = marks.find((candidate) => candidate.id === id);
  return mark ? (mark.name ?? `${mark.kind} ${mark.id}`) : id;
}

function unmetWords({ forces }: StudyLayout): string {
  const unmet = forces.filter(({ ok }) => ok === 'no');
  if (unmet.length > 0) {
    const worst = unmet.reduce((a, b) => (share(b) < share(a) ? b : a));
    const figures =
      worst.factor === null || worst.required === null ? '' : `, ${down(worst.factor)} of ${worst.required} needed`;
    return ` Not met: ${worst.kind} at ${worst.at}${figures}.`;
  }
  const judged = forces.some(({ ok, kind }) => ok === 'judge on site' && kind !== 'grab' && kind !== 'part');
  return judged ? ' Judge tree or rock on site.' : '';
}

const share = ({ factor, required }: { factor: number | null; required: number | null }): number =>
  factor === null || required === null ? 0 : factor / required;

/** A factor with one decimal, never rounded up. */
const down = (factor: number): string => (Math.floor(factor * 10 + 1e-9) / 10).toFixed(1);

const countWords = (count: number, noun: string): string =>
  `${count === 0 ? 'no' : count} ${noun}${count === 1 ? '' : 's'}`;
