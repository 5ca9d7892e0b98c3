import type { PointM } from '../../geo/index.ts';
import type { HaulAnchors, HaulArrangement } from '../../rigging/index.ts';
import { toDegrees } from '../../units/index.ts';
import type { Candidate } from './candidate.ts';
import { evaluate } from './evaluate.ts';
import { keepOut } from './keep-out.ts';
import { layoutReasons } from './layout-reasons.ts';
import type { Layout, LayoutQuestion, Tie } from './layout-types.ts';
import { bitCount, trafficPast } from './people-there.ts';
import type { RankKey } from './rank.ts';
import type { Search } from './search.ts';
import { stagePlans } from './stages.ts';
import type { TiePlace } from './tie-places.ts';

/** Works out everything about an arrangement that a search found, but its place among the others and why. */
export function workOut(candidate: Candidate, search: Search, question: LayoutQuestion): Omit<Layout, 'rank' | 'why'> {
  const { frame, means } = search;
  const { kind, along, anchor, turn, belay, handTurn, base, lanesTaken, apparatusAtMin } = candidate;
  const { closure } = trafficPast(frame.ground.traits, lanesTaken);
  const run = runOf(candidate);
  const anchors = anchorsOf(candidate, frame.edge);
  const result = evaluate(
    { ground: base.ground, run, anchors, apparatusAtMin, alternatingLane: closure === 'one lane in turn' },
    means,
  );
  const tied = [anchor, belay.tie, ...(turn ? [turn.tie] : []), ...(handTurn ? [handTurn.tie] : [])];
  const others = [anchor.id, turn?.tie.id, handTurn?.tie.id];
  const turnAngleDeg = turn === null ? null : angleBetween(turn.bend, frame.edge, anchor);
  const layout: Omit<Layout, 'rank' | 'why' | 'reasons'> = {
    id: layoutId(candidate),
    kind,
    edge: frame.edge,
    anchor: tieOf(anchor),
    turn: turn && { ...tieOf(turn.tie), bend: { x: turn.bend.x, y: turn.bend.y } },
    belay: { ...tieOf(belay.tie), sharesWith: others.includes(belay.tie.id) ? belay.tie.id : null },
    handTurn: handTurn && { ...tieOf(handTurn.tie), bend: handTurn.bend },
    along,
    spotIds: [...new Set(tied.flatMap(({ spot }) => (spot === null ? [] : [spot.id])))],
    apparatusAtMin,
    ground: base.ground,
    contacts: candidate.contacts,
    run,
    ...result,
    stages: result.fits.mutualAid.fit === 'yes' ? null : stagesOf(candidate, search, question),
    lanesTaken: Array.from({ length: 32 }, (_, lane) => lane).filter((lane) => (lanesTaken >> lane) & 1),
    lanesBlocked: bitCount(lanesTaken),
    closure,
    turnAngleDeg,
    keepOut: keepOut(frame, candidate, frame.road, question.descent.line.lengthM),
    key: finalKey(candidate, result),
  };
  return { ...layout, reasons: layoutReasons(layout, means) };
}

/** The rank's own figures, the minutes and hold as worked out. */
function finalKey({ key }: Candidate, result: ReturnType<typeof evaluate>): RankKey {
  return { ...key, minutes: result.minutes.total ?? Number.POSITIVE_INFINITY };
}

/** Lengths of an arrangement along its ropes. */
function runOf({ kind, choice, base, fieldM, belay, roomM }: Candidate): HaulArrangement {
  const { system, advantage, handTurns, throwRopeM } = choice;
  return {
    ...{ kind, system, advantage, handTurns, throwRopeM, fieldM },
    edgeToTurnM: base.edgeToTurnM,
    belayRunM: belay.runM,
    walkingRoomM: roomM,
  };
}

/** What each line is tied to and where it pulls. */
function anchorsOf({ anchor, turn, belay, handTurn }: Candidate, edge: PointM): HaulAnchors {
  const from = (a: PointM, b: PointM): PointM => ({ x: b.x - a.x, y: b.y - a.y });
  const mainTowardEdge = from(turn?.bend ?? anchor, edge);
  return {
    main: anchor.anchor,
    turn: turn && { anchor: turn.tie.anchor, towardMain: from(turn.bend, anchor) },
    belay: belay.tie.anchor,
    handTurn: handTurn && { anchor: handTurn.tie.anchor, towardSystem: mainTowardEdge, alongTeam: handTurn.way },
    mainTowardEdge,
    belayTowardEdge: from(belay.tie, edge),
  };
}

function stagesOf({ belay }: Candidate, { means }: Search, { descent, marks, plane }: LayoutQuestion) {
  const { bridleM, tailsM } = means.rates;
  return stagePlans(descent, marks, plane, bridleM + belay.runM + tailsM, means.allRopesM);
}

const tieOf = ({ id, anchor, spot, x, y }: TiePlace): Tie => ({
  ...{ id, kind: anchor.kind, apparatusId: spot?.apparatusId ?? null },
  at: { x, y },
});

/** The same arrangement always bears the same id: kind, anchor, turn, belay, system. */
function layoutId({ kind, anchor, turn, belay, choice }: Candidate): string {
  const system = choice.system === 'built in' ? 'built in' : 'separate';
  return [kind, anchor.id, turn?.tie.id ?? '', belay.tie.id, choice.advantage, system].join('|');
}

/** Angle between the ways from one point to two others, degrees. */
function angleBetween(at: PointM, a: PointM, b: PointM): number {
  const ax = a.x - at.x;
  const ay = a.y - at.y;
  const bx = b.x - at.x;
  const by = b.y - at.y;
  return toDegrees(Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)));
}
