import { defaultRates as rates } from '../../../src/book/index.ts';
import {
  type AdvantageName,
  advantageNames,
  type ForceCheck,
  governs,
  type Haul,
  type HaulAnchors,
  type HaulArrangement,
  type HaulGround,
  haul,
  haulForces,
  haulPeople,
  idealAdvantage,
  isCompound,
  minutes,
  type RopeNeed,
  ropeFits,
} from '../../../src/rigging/index.ts';
import {
  closureKind,
  compareRank,
  haulGround,
  kitArrivals,
  type LayoutQuestion,
  type RankKey,
  resetClass,
} from '../../../src/spots/index.ts';

/** One way to rig a haul: system, turn of the hauling end, rope that shortens the throw (null: none does). */
export interface Rig {
  readonly system: HaulArrangement['system'];
  readonly advantage: AdvantageName;
  readonly throwRopeM: number | null;
}

/** A haul whose places are known. */
export interface Placed {
  readonly kind: 'straight' | 'turned';
  /** From the edge to the last bend, or to the anchor of a straight haul, metres. */
  readonly toEdgeM: number;
  readonly fieldM: number;
  readonly belayRunM: number;
  readonly handTurns: 0 | 1;
  readonly roomM: number;
  readonly atMin: number;
  /** Bits, one a lane. */
  readonly lanes: number;
}

/** What layouts of a site are ranked by, from the public figures of the rigging alone. */
export class Objective {
  readonly question: LayoutQuestion;
  readonly #grounds = new Map<number, HaulGround>();
  readonly #bounds = new Map<string, number>();
  readonly #kits;
  readonly #alarm: number;
  readonly #ropes: readonly (number | null)[];

  constructor(question: LayoutQuestion) {
    this.question = question;
    const { arrivals, kits } = question;
    this.#kits = kitArrivals(arrivals, kits);
    this.#alarm = arrivals.filter(({ tier }) => tier !== 'mutual aid').reduce((sum, { people }) => sum + people, 0);
    this.#ropes = [null, ...new Set(this.#kits.flatMap(({ ropesM }) => ropesM))];
  }

  /** Every way to rig, whatever comes of it. */
  *rigs(): Generator<Rig> {
    for (const advantage of advantageNames) {
      for (const system of ['built in', 'separate haul line'] as const) {
        for (const throwRopeM of this.#ropes) yield { advantage, system, throwRopeM };
      }
    }
  }

  ground(toEdgeM: number): HaulGround {
    const known = this.#grounds.get(toEdgeM);
    if (known) return known;
    const made = haulGround(this.question.descent, toEdgeM, [], rates)!.haulGround;
    this.#grounds.set(toEdgeM, made);
    return made;
  }

  haul(placed: Placed, rig: Rig): Haul {
    return haul(this.ground(placed.toEdgeM), this.run(placed, rig), this.question.ground.conditions, rates);
  }

  run({ kind, toEdgeM, fieldM, belayRunM, handTurns, roomM }: Placed, rig: Rig): HaulArrangement {
    const edgeToTurnM = kind === 'turned' ? toEdgeM : 0;
    return { ...rig, kind, edgeToTurnM, fieldM, belayRunM, handTurns, walkingRoomM: roomM };
  }

  forces(hauled: Haul, anchors: HaulAnchors): ForceCheck[] {
    return haulForces(hauled, anchors, this.question.ground.conditions, rates);
  }

  /** 0 at hand when rigging ends, 1 by the first alarm, 2 by mutual aid, else 3 and the metres that are missing. */
  kitClass(need: RopeNeed, kind: Placed['kind'], atMin: number): number {
    const rigging = rates.closureMin + (kind === 'turned' ? rates.rigTurnedMin : rates.rigStraightMin);
    const byMin = Math.max(rigging - rates.standMin, atMin);
    const atHand = this.#kits.filter((kit) => kit.atMin <= byMin);
    if (ropeFits(need, atHand, rates).mutualAid.fit === 'yes') return 0;
    const { firstAlarm, mutualAid } = ropeFits(need, this.#kits, rates);
    if (firstAlarm.fit === 'yes') return 1;
    if (mutualAid.fit === 'yes') return 2;
    return 3 + Math.ceil(mutualAid.short.reduce((sum, { byM }) => sum + byM, 0) - 1e-9);
  }

  /** People who raise, and whether the first alarm brings them. */
  people(hauled: Haul, lanes: number) {
    const { descent, ground, arrivals } = this.question;
    const alternatingLane = closureKind(ground.traits, bitsIn(lanes)) === 'one lane in turn';
    const planHigh = descent.angle?.planAs === 'high';
    const people = haulPeople({ haulTeam: hauled.team.walking, planHigh, alternatingLane }, arrivals);
    return { people, byAlarm: people.leastRaise.count <= this.#alarm };
  }

  /** The key of a haul; null where its throw is too short to work with. */
  key(placed: Placed, rig: Rig, anchors: HaulAnchors): RankKey | null {
    const hauled = this.haul(placed, rig);
    if (!hauled.workable) return null;
    const { verdict, leastHoldFactor } = governs(this.forces(hauled, anchors));
    const { people, byAlarm } = this.people(hauled, placed.lanes);
    return {
      ...{ verdict, practical: hauled.practical, crewByAlarm: byAlarm, advantage: rig.advantage, leastHoldFactor },
      kit: this.kitClass(hauled.ropeM, placed.kind, placed.atMin),
      ...{
        resets: hauled.resets,
        lanes: bitsIn(placed.lanes),
        grade: this.grade,
        straight: placed.kind === 'straight',
      },
      liftedByHandM: hauled.liftedByHandM,
      minutes: this.#minutes(placed, rig, hauled, people),
    };
  }

  get grade(): number {
    const { bench, site } = this.question.ground;
    return Math.abs(Math.tan((bench.gradeDeg[site!.stationM] * Math.PI) / 180));
  }

  #minutes(placed: Placed, { advantage }: Rig, hauled: Haul, people: ReturnType<typeof haulPeople>): number {
    const { ground, patients } = this.question;
    const atHand = this.kitClass(hauled.ropeM, placed.kind, placed.atMin) === 0;
    const { total } = minutes(
      {
        ...{ kind: placed.kind, lowerM: this.ground(placed.toEdgeM).groundLengthM, patients },
        raise: {
          ...{ raiseM: hauled.raiseM, idealAdvantage: idealAdvantage(advantage), compound: isCompound(advantage) },
          ...{ pulls: hauled.pulls, regripsPerPull: hauled.regripsPerPull, crewAtMin: people.leastRaise.atMin },
        },
        secondApparatusAtMin: placed.atMin,
        kitAtMin: atHand ? 0 : (ropeFits(hauled.ropeM, this.#kits, rates).from?.atMin ?? null),
        lowerCrewAtMin: people.leastLower.atMin,
      },
      ground.conditions,
      rates,
    );
    return total ?? Number.POSITIVE_INFINITY;
  }

  /**
   * With the lanes that it takes (none: the fewest people), what a field within a metre above `fromM` can at most come to, as one number: no haul in it has a lower one. Steps from
   * "practical" to "resets"; infinite where no throw in it works.
   */
  bound(placed: Placed, fromM: number): number {
    const name = `${placed.kind} ${placed.toEdgeM} ${placed.atMin} ${bitsIn(placed.lanes)} ${fromM}`;
    const known = this.#bounds.get(name) ?? this.#boundOf(placed, fromM);
    this.#bounds.set(name, known);
    return known;
  }

  #boundOf(placed: Placed, fromM: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const rig of this.rigs()) {
      // What comes later is less simple: nothing passes a haul without fault.
      if (least < codeOf({ ...FAULTLESS, advantage: rig.advantage })) break;
      // The throw of the long end, the rope of the short one.
      const { throwRopeM } = rig;
      const longer = { ...placed, fieldM: fromM + 1 };
      const hauled = this.haul(longer, { ...rig, throwRopeM: throwRopeM === null ? null : throwRopeM + 1 });
      if (!hauled.workable) continue;
      const { main, belay, haul: line } = hauled.ropeM;
      const need = { main: main - 1, belay, haul: line === null ? null : line - 1 };
      const { byAlarm } = this.people(hauled, placed.lanes);
      const kit = this.kitClass(need, placed.kind, placed.atMin);
      least = Math.min(
        least,
        codeOf({ ...rig, practical: hauled.practical, kit, crewByAlarm: byAlarm, resets: hauled.resets }),
      );
    }
    return least;
  }
}

const FAULTLESS = { practical: true, kit: 0, crewByAlarm: true, resets: 0 };

/** Steps of the rank from "practical" to "resets" as one number. */
export function codeOf(key: Pick<RankKey, 'practical' | 'kit' | 'crewByAlarm' | 'advantage' | 'resets'>): number {
  let code = key.practical ? 0 : 1;
  code = code * 1000 + Math.min(999, key.kit);
  code = code * 2 + (key.crewByAlarm ? 0 : 1);
  code = code * advantageNames.length + advantageNames.indexOf(key.advantage);
  return code * 4 + resetClass(key.resets);
}

/** The key that ranks last; null where one of them is missing. */
export const worstOf = (keys: readonly (RankKey | null)[]): RankKey | null =>
  keys.reduce((last, key) => (last === null || key === null || compareRank(last, key).order >= 0 ? key && last : key));

export function bitsIn(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest >>= 1) count += rest & 1;
  return count;
}
