import type { MarkKind } from '../book/index.ts';
import type { SetbackRule } from './setbacks.ts';

/** What is wrong with a spot. "unmet" refuses it, "check" is for somebody on site. */
export interface SpotProblem {
  readonly code:
    | 'off-bench'
    | 'setback'
    | 'slope'
    | 'mark'
    | 'edge-area'
    | 'unreachable'
    | 'near-descent'
    | 'shoulder'
    | 'narrow'
    | 'slope-check'
    | 'edge-uncertain'
    | 'no-attachment'
    | 'no-hold';
  readonly severity: 'unmet' | 'check';
  /** One sentence for people, without figures. */
  readonly text: string;
  /** The mark or mapped feature in the way. */
  readonly markId: string | null;
}

const setbackWords: Record<SetbackRule, string> = {
  level: 'Level ground was not seen that far out',
  cut: 'Too near the foot of the cut',
  carriageway: 'Outer wheels too near the edge',
  'wet gravel': 'Outer wheels too near the edge for wet gravel',
  'off the carriageway': 'Off the carriageway the outer wheels are too near the edge',
  'steep below': 'Outer wheels too near an edge that is steep or walled below',
  'soft or wet': 'Outer wheels too near the edge for soft or wet ground',
  barrier: 'Past a barrier, a ditch, a wall or a jump of the edge',
};

const unmet = (code: SpotProblem['code'], text: string, markId: string | null = null): SpotProblem => ({
  ...{ code, severity: 'unmet', text, markId },
});
const check = (code: SpotProblem['code'], text: string): SpotProblem => ({
  ...{ code, severity: 'check', text, markId: null },
});

/** The problems of a spot, each with its sentence. */
export const spotProblems = {
  offBench: () => unmet('off-bench', 'Not on a measured bench.'),
  setback: (rule: SetbackRule | null) => unmet('setback', `${setbackWords[rule ?? 'carriageway']}.`),
  slope: () => unmet('slope', 'Grade or crossfall over the limit for parking, or unknown.'),
  mark: (kind: MarkKind, id: string) => unmet('mark', `Too near a marked or mapped ${kind}.`, id),
  edgeArea: () => unmet('edge-area', 'Stands where the edge must stay free of vehicles.'),
  unreachable: () => unmet('unreachable', 'The bench is too narrow to drive there from either end.'),
  nearDescent: () =>
    unmet('near-descent', 'Apparatus without a part in the haul stays farther to the side of the descent.'),
  shoulder: () => check('shoulder', 'Check that the shoulder is firm.'),
  narrow: () => check('narrow', 'Narrow bench: park mid-road and check the distance to the edge.'),
  slopeCheck: () => check('slope-check', 'Check grade and crossfall before parking.'),
  edgeUncertain: () => check('edge-uncertain', 'The edge is not known well here: check the distance to it.'),
  noAttachment: () => check('no-attachment', 'No attachment point of stated strength: no anchor.'),
  noHold: () => check('no-hold', 'Tires hold nothing here: no anchor.'),
};
