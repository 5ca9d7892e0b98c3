import type { RoadKey } from '../recipe.ts';

/** A site by its road, station of the true middle line and side, and why it is in the district. */
export interface SiteSeed {
  readonly id: string;
  readonly name: string;
  readonly road: RoadKey;
  readonly station: number;
  readonly side: 'left' | 'right';
  readonly character: string;
}

const site = (
  id: string,
  name: string,
  road: RoadKey,
  station: number,
  side: 'left' | 'right',
  character: string,
): SiteSeed => ({ id, name, road, station, side, character });

/** Invented names; sites of clearly different character. */
export const siteSeeds: readonly SiteSeed[] = [
  site(
    'kettle-bend',
    'Kettle Bend',
    'lantern',
    1205,
    'right',
    'steep, close under the upper limit, with water at the bottom',
  ),
  site(
    'third-culvert',
    'Third Culvert',
    'lantern',
    1500,
    'right',
    'fill with a drop on both sides, water at the bottom',
  ),
  site('split-oak', 'Split Oak Turnout', 'cinder', 2556, 'right', 'low, with plenty of room in a turnout'),
  site('long-ladle', 'Long Ladle', 'cinder', 1860, 'right', 'a hillside longer than the rope at hand'),
  site('barrier-reach', 'Barrier Reach', 'lantern', 2100, 'right', 'high, behind a guardrail'),
  site('level-acre', 'Level Acre', 'lantern', 3720, 'right', 'flat ground: no edge'),
  site('nailbox-cut', 'Nailbox Cut', 'cinder', 1525, 'right', 'in a cut: no edge'),
  site('lower-elbow', 'Lower Elbow', 'quarry', 382, 'left', 'outside of a hairpin'),
  site('two-legs', 'Two Legs', 'quarry', 600, 'right', 'falls on to a lower leg of the same road'),
  site('pinch-ledge', 'Pinch Ledge', 'quarry', 1615, 'right', 'high, on a track too narrow to haul straight'),
  site('wet-foot', 'Wet Foot', 'lantern', 120, 'right', 'a rough natural slope into the creek'),
  site('snagwood', 'Snagwood', 'cinder', 2160, 'right', 'under trees: few ground returns'),
  site('stone-skirt', 'Stone Skirt', 'lantern', 2915, 'right', 'on top of a retaining wall'),
  site('broken-shelf', 'Broken Shelf', 'cinder', 1640, 'right', 'a vertical step part of the way down'),
  site('coin-toss', 'Coin Toss', 'cinder', 855, 'right', 'on the lower limit: undecided'),
  site('gravel-fan', 'Gravel Fan', 'quarry', 1060, 'left', 'low and even, above the lower legs'),
  site('bridge-head', 'Bridge Head', 'lantern', 3205, 'right', 'on a bridge: not computed'),
  site('tender-verge', 'Tender Verge', 'lantern', 540, 'right', 'a soft shoulder before the edge'),
  site('hatbox-corner', 'Hatbox Corner', 'quarry', 1465, 'right', 'the map line lies 4 m off the bench'),
  site('twin-lanes', 'Twin Lanes', 'lantern', 1745, 'right', 'the outer carriageway of a divided stretch'),
];
