import type { QuantityName } from '../book/index.ts';
import type { Origin, Study, StudyReading } from './study.ts';

/** Where each deciding number of a study comes from, its sigma in the number's own unit, and the rule behind it. */
export function originsOf(
  study: Omit<Study, 'sentence'>,
  benchHow: Origin['how'],
  benchRule: string,
): Record<string, Origin> {
  const origins: Record<string, Origin> = {};
  const set = (path: string, rule: string, sigma: number | null = null, how: Origin['how'] = 'computed'): void => {
    origins[path] = { how, sigma, rule };
  };
  const { bench, above, edge, descent, angle, terrain } = study;
  if (bench) {
    set('bench.widthM', benchRule, null, benchHow);
    set('bench.gradeDeg', 'height of the road’s middle along the road');
    set('bench.crossfallDeg', 'slope of the bench across the road');
    set('bench.lineShiftM', 'evenness of the ground across and along the road, one path along it');
  }
  if (above) set('above.angleDeg', 'steepest 5 m of the slope above the toe');
  if (edge) {
    set('edge.offsetM', benchRule, edge.offsetSigmaM, benchHow);
    set('edge.lipAngleDeg', 'change of slope between 3 m fits either side of the edge');
  }
  if (descent) {
    set('descent.dropM', 'bilinear heights at edge and end', terrain.verticalRmseM);
    set('descent.ropeLineM', 'upper hull of the profile, 0.8 m at the litter');
    set('descent.sightLostAtM', 'eye 1.7 m at the edge, load 1 m above ground; vegetation not seen');
  }
  if (angle) {
    const window = `steepest ${angle.windowM} m window, ground drawn given the data`;
    set('angle.governingDeg', window, angle.governingSigmaDeg);
    set('angle.planAs', `rule ${angle.rule.name}, on the worse of two runs at the stated error and half of it`);
    set('angle.nearbyMaxDeg', 'steepest window within 3 m along the road');
    set('angle.ropePullOfWeight', 'sine and cosine of the governing angle, no friction');
    if (terrain.verticalRmseM === null) {
      set('terrain.verticalRmseM', 'not stated: multiples of 0.10 m weighed', null, 'assumed');
    }
  }
  layoutOrigins(study, set);
  for (const reading of study.field) measuredOrigin(origins, reading);
  return origins;
}

/** The numbers of a study that a reading of each quantity takes the place of. */
const measuredPaths: Readonly<Record<QuantityName, readonly string[]>> = {
  angleDeg: ['angle.governingDeg', 'angle.planAs'],
  lipAngleDeg: ['edge.lipAngleDeg'],
  groundLengthM: ['descent.groundLengthM', 'descent.ropeLineM'],
  dropM: ['descent.dropM'],
  stepHeightM: ['descent.steps'],
  slopeAboveDeg: ['above.angleDeg'],
  gradeDeg: ['bench.gradeDeg'],
  crossfallDeg: ['bench.crossfallDeg'],
  edgeOffsetM: ['edge.offsetM'],
  benchWidthM: ['bench.widthM'],
  edgeToAnchorM: ['layouts.haulFieldM'],
  clearBeforeM: ['layouts.roomBeforeM'],
  clearAfterM: ['layouts.roomAfterM'],
  sightBeforeM: ['closure.sightM'],
  sightAfterM: ['closure.sightM'],
};

function measuredOrigin(origins: Record<string, Origin>, reading: StudyReading): void {
  const { quantity, used, tool, by, on, computed, sigma, betters } = reading;
  if (used !== 'measured') return;
  const was = computed === null ? 'not computed' : `computed ${computed}`;
  const gentler = betters ? ', gentler than computed, on two readings' : '';
  const rule = `${tool}, ${by}, ${on}; ${was}${gentler}`;
  for (const path of measuredPaths[quantity]) origins[path] = { how: 'measured', sigma, rule, reading };
}

type SetOrigin = (path: string, rule: string, sigma?: number | null, how?: Origin['how']) => void;

/** Paths under `layouts` hold for every layout; each layout's own `reasons` have formula, inputs and source. */
function layoutOrigins(
  { spots, layouts, ways, closure, arriving, given }: Omit<Study, 'sentence'>,
  set: SetOrigin,
): void {
  const people = given.resources === 'book' ? 'typed' : 'assumed';
  const whose = given.resources === 'book' ? 'the district’s own' : 'shipped, no book given';
  if (spots.length > 0)
    set('spots.holdKn', 'braked share of the empty weight on tire friction, whichever way it is pulled');
  if (layouts.length > 0) {
    set('layouts.haulFieldM', 'plan distance from the turn, or the edge, to where the anchor is tied');
    set('layouts.resets', 'pulls by throw, stretch and sit-back, less one');
    set('layouts.ropeM', 'lengths along the ropes, with bridle and tails');
    set('layouts.tensionKn', 'walking, all hanging, held; the largest over all positions of the load');
    set('layouts.forces', 'statics, each against its own factor');
    set('layouts.team', 'walking pull by hand strength (common practice, no source)');
    set('layouts.people', `roles by phase against arrivals, ${whose}`, null, people);
    set('layouts.minutes', 'rates of the book, shown as a range upward (common practice, no source)', null, people);
  }
  if (ways.length > 0) set('ways.minutes', `rates of the book, arrivals ${whose}`, null, people);
  if (closure) {
    set('closure.taperM', 'published formulas from the posted speed', null, closure.speed.how);
    set('closure.sightM', 'eye 1.08 m to object 0.6 m over the ground; vegetation not seen');
  }
  if (arriving.length > 0) set('arriving', `arrivals and kit ${whose}`, null, people);
}
