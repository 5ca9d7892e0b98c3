/** What an arrangement keeps to: metres and degrees (common practice, no source). */
export const LAYOUT_LIMITS = {
  /** The change of direction stands at least this far behind the edge. */
  turnBehindM: 2.5,
  /** Anchor of a straight haul lies within this of the descent's line; so does the bend of a turned one … */
  nearDescentDeg: 10,
  /** … but up to this where nothing holds a nearer one: the rope then also bends in plan at the edge. */
  bendOffDeg: 25,
  /** Tie between the change of direction and what holds it. */
  tieLeastM: 0.5,
  tieMostM: 4,
  /** The tie lies within this of the resultant of both legs. */
  tieOffDeg: 20,
  corridorM: 2,
  /** Rope above the ground at an apparatus or a change of direction, and over a barrier. */
  ropeUpM: 0.6,
  barrierUpM: 0.8,
  /** The belay stands this far to the side of the change of direction where both are tied to one anchor. */
  belayAsideM: 3,
  /** Farthest from the edge, and from the descent's line, that a belay is tied. */
  belayMostM: 20,
  belayOffDeg: 45,
  /** Clear way that is counted for a haul team. */
  roomMostM: 40,
  /** Beside parked apparatus a team passes through this. */
  passM: 1,
  /** The hauling end turns no farther from the anchor of the system than this. */
  handTurnMostM: 6,
} as const;
