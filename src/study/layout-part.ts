import type { LocalPlane, PointM } from '../geo/index.ts';
import type { PhasePeople, RopeFits } from '../rigging/index.ts';
import type { Layout, StagePlan } from '../spots/index.ts';
import { positionOf } from './descent-part.ts';
import { forcePart } from './force-part.ts';
import { degrees, kilonewtons, metres, minutesOf } from './rounded.ts';
import type { StudyCount, StudyLayout, StudyShort } from './study.ts';

/** The contract's form of a layout. */
export function layoutPart(layout: Layout, plane: LocalPlane): StudyLayout {
  const { haul, run, anchor, turn, belay, handTurn, minutes, people } = layout;
  const at = ({ x, y }: PointM) => positionOf(plane, x, y);
  const { walking, hanging, held, belay: belayKn } = haul.tensionKn;
  const { walking: team, allHang, sustained, handsAtOnce, checkGrab } = haul.team;
  return {
    id: layout.id,
    kind: layout.kind,
    anchor: anchor.id,
    turn: turn?.id ?? null,
    points: {
      edge: at(layout.edge),
      turn: turn ? at(turn.bend) : null,
      anchor: at(anchor.at),
      belayAnchor: at(belay.at),
      handTurn: handTurn ? at(handTurn.bend) : null,
    },
    lines: {
      // In a turned haul device and capture stand at the change of direction, where the held load pulls straight.
      main: {
        anchor: anchor.id,
        deviceAt: turn?.id ?? anchor.id,
        captureAt: turn?.id ?? anchor.id,
        turn: turn?.id ?? null,
      },
      belay: {
        anchor: belay.id,
        deviceAt: belay.id,
        runM: metres(run.belayRunM),
        sharesAnchorWith: belay.sharesWith,
      },
      hand: handTurn ? { anchor: handTurn.id } : null,
    },
    contacts: layout.contacts.map(({ distanceM, bendDeg }) => ({
      distanceM: metres(distanceM),
      bendDeg: degrees(bendDeg),
    })),
    haulFieldM: metres(run.fieldM),
    throwM: metres(haul.throwM),
    raiseM: metres(haul.raiseM),
    pulls: haul.pulls,
    resets: haul.resets,
    liftedByHandM: metres(haul.liftedByHandM),
    mechanicalAdvantage: run.advantage,
    system: run.system,
    tensionKn: {
      walking: kilonewtons(walking),
      hanging: kilonewtons(hanging),
      held: kilonewtons(held),
      belay: kilonewtons(belayKn),
    },
    team: { walking: team, allHang, sustained, handsAtOnce, checkGrab },
    walkM: metres(haul.walkM),
    regripsPerPull: haul.regripsPerPull,
    ropeM: {
      main: metres(haul.ropeM.main),
      belay: metres(haul.ropeM.belay),
      haul: haul.ropeM.haul === null ? null : metres(haul.ropeM.haul),
    },
    fits: fitsPart(layout.fits),
    stages: layout.stages?.map(stagePart) ?? null,
    lanesBlocked: layout.lanesBlocked,
    turnAngleDeg: layout.turnAngleDeg === null ? null : degrees(layout.turnAngleDeg),
    keepOut: {
      type: 'Polygon',
      coordinates: [layout.keepOut.map((point) => [at(point).lon, at(point).lat])],
    },
    people: {
      contact: people.contact ? countPart(people.contact) : null,
      leastLower: countPart(people.leastLower),
      leastRaise: countPart(people.leastRaise),
      full: countPart(people.full),
      roles: people.leastRaise.roles.map(({ role, count }) => ({ role, count })),
    },
    forces: layout.forces.map(forcePart),
    minutes: {
      from: minutes.shown?.from ?? null,
      to: minutes.shown?.to ?? null,
      parts: partsOf(minutes.parts),
    },
    rank: layout.rank,
    why: [...layout.why],
    reasons: [...layout.reasons],
  };
}

const countPart = ({ count, atMin }: PhasePeople): StudyCount => ({ count, atMin });

/** With what is short before the arrival that mends it, or for good where none does. */
function fitsPart({ firstArriving, firstAlarm, mutualAid }: RopeFits): StudyLayout['fits'] {
  const short = [mutualAid, firstAlarm, firstArriving].find((tier) => tier.short.length > 0)?.short ?? [];
  return {
    firstArriving: firstArriving.fit,
    firstAlarm: firstAlarm.fit,
    mutualAid: mutualAid.fit,
    short: short.map(({ line, byM, unit, atMin }): StudyShort => ({ line, byM: metres(byM), unit, atMin })),
  };
}

const stagePart = ({ count, ropeLengthM, at }: StagePlan) => ({
  count,
  ropeLengthM: metres(ropeLengthM),
  at: at.map(({ distanceM, what }) => ({ distanceM: metres(distanceM), what })),
});

function partsOf(parts: Layout['minutes']['parts']): StudyLayout['minutes']['parts'] {
  const { closure, rig, lower, package: packaging, raise, wait } = parts;
  return {
    closure: minutesOf(closure),
    rig: minutesOf(rig),
    lower: minutesOf(lower),
    package: minutesOf(packaging),
    raise: minutesOf(raise),
    wait: wait === null ? null : minutesOf(wait),
  };
}
