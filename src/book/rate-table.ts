/** One rate that a district may set. `source` is a key in docs/sources.md, or 'practice': common practice, no source. */
export interface Rate {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly source: string;
  readonly note: string;
}

const rate = (
  value: number,
  [least, most]: readonly [number, number],
  unit: string,
  source: string,
  note: string,
): Rate => ({
  value,
  least,
  most,
  unit,
  source,
  note,
});

/** Shipped rates, frictions and policies, with the bounds within which a book may change them. */
export const rateTable = {
  // Load
  patientKg: rate(90, [40, 250], 'kg', 'practice', 'one patient'),
  litterAndGearKg: rate(25, [10, 80], 'kg', 'practice', 'litter, packaging, rigging on the line'),
  attendantKg: rate(100, [70, 150], 'kg', 'practice', 'one attendant with gear'),
  attendants: rate(4, [1, 6], 'people', 'practice', 'attendants on the line'),
  litterFriction: rate(
    0.3,
    [0, 1],
    '',
    'practice',
    'litter dragged over ground; no published value is known: record it in drills',
  ),
  attendantShareLeast: rate(
    0.5,
    [0.2, 1],
    '',
    'practice',
    'weight of a walking attendant on the rope on a gentle slope',
  ),
  attendantShareFromDeg: rate(30, [15, 44], '°', 'practice', 'slope from which that share rises'),
  attendantShareFullDeg: rate(45, [45, 60], '°', 'practice', 'slope at which the rope carries all of it'),
  attendantShareWet: rate(0.25, [0, 0.5], '', 'practice', 'added on wet ground'),
  belayFloorKn: rate(2.67, [2.67, 6], 'kN', 'rescue-load', 'the belay is never planned for less: 600 lbf'),
  // Rope over the ground
  edgeFriction: rate(0.44, [0.1, 0.8], '', 'delaney-2022', 'bare concrete edge: taken where no protection is named'),
  // Haul team
  pulleyEfficiency: rate(0.9, [0.5, 0.95], '', 'practice', 'rescue pulley; teaching pages give 0.75 to 0.90'),
  haulerKn: rate(0.22, [0.1, 0.3], 'kN', 'bassett-haul-systems', 'one hauler, short pulls: 50 lbf'),
  haulerSustainedKn: rate(0.13, [0.05, 0.2], 'kN', 'bassett-haul-systems', 'one hauler, sustained grip: 30 lbf'),
  haulerJerkKn: rate(0.45, [0.3, 1], 'kN', 'practice', 'the most that one hauler puts on the rope'),
  grabSlipKn: rate(7, [3, 9.5], 'kN', 'schwartz-pulley-forces', 'a haul grab slips: lower end of 7 to 9.5'),
  smallestTeam: rate(3, [2, 12], 'people', 'practice', 'smallest haul team'),
  // Haul field and pulls
  clearanceNearM: rate(1, [0.5, 3], 'm', 'practice', 'kept free at the turn or the edge'),
  clearanceAnchorM: rate(1.5, [0.5, 3], 'm', 'practice', 'kept free at the anchor'),
  leastThrowM: rate(1, [0.5, 5], 'm', 'practice', 'a shorter throw is not worth rigging'),
  ropeStretch: rate(0.03, [0, 0.1], '', 'practice', 'stretch of the loaded rope before the load first moves'),
  sitBackM: rate(0.25, [0, 1], 'm', 'practice', 'sinks back onto the capture at each pull'),
  mostResets: rate(10, [3, 30], 'resets', 'practice', 'more are not practical'),
  landingM: rate(3, [1, 6], 'm', 'practice', 'load clear of the edge'),
  collapsedM: rate(1.5, [0.5, 3], 'm', 'practice', 'collapsed system at the anchor of a straight haul'),
  landingGapM: rate(2, [0.5, 4], 'm', 'practice', 'kept between the load and the turn or the collapsed system'),
  // Rope
  bridleM: rate(1.5, [0.5, 4], 'm', 'practice', 'main line to litter'),
  tailsM: rate(4, [2, 10], 'm', 'practice', 'knots and tails of a line'),
  pastCaptureM: rate(3, [1, 10], 'm', 'practice', 'main line beyond the capture, for the haul grab'),
  joinTakesM: rate(1, [0.5, 3], 'm', 'practice', 'rope that a joining knot takes'),
  knotShare: rate(0.75, [0.5, 0.9], '', 'practice', 'strength that a knot keeps: lower end of 75 to 90 %'),
  // Anchors
  brakedShare: rate(0.5, [0.2, 1], '', 'practice', 'share of the empty weight on braked wheels'),
  tireFriction: rate(0.35, [0.1, 0.5], '', 'practice', 'tires on a dry road, gravel included'),
  tireFrictionWet: rate(0.25, [0.1, 0.4], '', 'practice', 'tires on a wet road'),
  holdFactor: rate(3, [2, 10], ': 1', 'practice', 'needed of an apparatus against sliding'),
  heldFactor: rate(10, [5, 15], ': 1', 'practice', 'static factor on what is held'),
  haulingFactor: rate(5, [3, 15], ': 1', 'practice', 'static factor on what lasts while people pull, all hanging'),
  tiePairDeg: rate(60, [60, 90], '°', 'practice', 'widest angle between two ties that share a force'),
  treeLeastM: rate(0.15, [0.15, 0.6], 'm', 'practice', 'thinnest live, rooted trunk that is offered'),
  treePreferredM: rate(0.3, [0.2, 0.8], 'm', 'practice', 'trunk preferred'),
  // Minutes
  closureMin: rate(5, [1, 30], 'min', 'practice', 'close the lanes'),
  rigStraightMin: rate(8, [3, 60], 'min', 'practice', 'rig a straight haul'),
  rigTurnedMin: rate(12, [4, 60], 'min', 'practice', 'rig a turned haul'),
  standMin: rate(8, [2, 60], 'min', 'practice', 'from the arrival of a second apparatus or a kit to rigged'),
  lowerMPerMin: rate(6, [1, 12], 'm/min', 'practice', 'lowering'),
  packageMin: rate(10, [5, 60], 'min', 'practice', 'packaging; freeing the patient is not counted'),
  raiseMPerMin: rate(6, [1, 12], 'm/min', 'practice', 'raising at most'),
  walkMPerMin: rate(18, [6, 40], 'm/min', 'practice', 'haul team walking; raises at this ÷ ideal advantage'),
  resetMin: rate(1, [0.25, 10], 'min', 'practice', 'one reset of a simple system; no published value is known'),
  resetCompoundMin: rate(1.5, [0.25, 15], 'min', 'practice', 'one reset of a compound system'),
  regripMin: rate(0.5, [0.1, 5], 'min', 'practice', 'team walks back and takes a new grip'),
  minutesNight: rate(1.25, [1, 3], '×', 'practice', 'at night'),
  minutesWet: rate(1.25, [1, 3], '×', 'practice', 'when wet'),
  minutesIce: rate(1.5, [1, 4], '×', 'practice', 'on ice or snow'),
  minutesWind: rate(1.1, [1, 3], '×', 'practice', 'in wind'),
  minutesSpread: rate(1.5, [1.2, 3], '×', 'practice', 'shown from the figure to this multiple of it'),
  // Carry
  carryDeg: rate(20, [10, 20], '°', 'practice', 'six bearers, longer slope'),
  carryM: rate(40, [5, 40], 'm', 'practice', 'longest slope for that'),
  carrySteepDeg: rate(25, [10, 25], '°', 'practice', 'six bearers, short slope'),
  carrySteepM: rate(15, [5, 15], 'm', 'practice', 'longest slope for that'),
  carryFourM: rate(10, [0, 10], 'm', 'practice', 'longest slope for four bearers'),
  carryWetDeg: rate(5, [5, 15], '°', 'practice', 'taken off both angles where wet, icy or loose'),
  carryLipDeg: rate(30, [10, 30], '°', 'practice', 'change of slope at the lip stays under this'),
  carryReadyMin: rate(10, [5, 60], 'min', 'practice', 'ready to carry'),
  carryUpMPerMin: rate(3, [0.5, 6], 'm/min', 'practice', 'carrying up'),
} satisfies Record<string, Rate>;
