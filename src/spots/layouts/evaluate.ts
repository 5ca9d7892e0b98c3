import {
  type ForceCheck,
  type Governing,
  gearChecks,
  governs,
  type Haul,
  type HaulAnchors,
  type HaulArrangement,
  type HaulGround,
  type HaulPeople,
  haul,
  haulForces,
  haulPeople,
  idealAdvantage,
  isCompound,
  type Minutes,
  minutes,
  type RopeFits,
  ropeFits,
} from '../../rigging/index.ts';
import { kitByMin } from './kit-at-hand.ts';
import { type Means, ropesBy } from './means.ts';
import { kitClass } from './rope-class.ts';

/** A given arrangement: ground, lines, what they are tied to, and what it takes of the road. */
export interface Arrangement {
  readonly ground: HaulGround;
  readonly run: HaulArrangement;
  readonly anchors: HaulAnchors;
  /** Arrival of the last apparatus that it uses, minutes. */
  readonly apparatusAtMin: number;
  /** Traffic passes in turn on one lane. */
  readonly alternatingLane: boolean;
}

/** Every figure of an arrangement. */
export interface Evaluation {
  readonly haul: Haul;
  readonly fits: RopeFits;
  readonly kitAtHand: boolean;
  /** On anchors, turn and belay, then on the gear. */
  readonly forces: readonly ForceCheck[];
  readonly governing: Governing;
  readonly people: HaulPeople;
  readonly minutes: Minutes;
}

/** Works out one arrangement with what comes to the site; the same rules for one that a search found and one that was given. */
export function evaluate(arrangement: Arrangement, means: Means): Evaluation {
  const { ground, run, anchors, apparatusAtMin, alternatingLane } = arrangement;
  const { rates, conditions, kits, arrivals, planHigh, ratings, patients } = means;
  const result = haul(ground, run, conditions, rates);
  const onAnchors = haulForces(result, anchors, conditions, rates);
  const turn = onAnchors.find(({ kind }) => kind === 'turn');
  const gear = gearChecks(run.advantage, result, turn?.kn ?? null, ratings, rates);
  const fits = ropeFits(result.ropeM, kits, rates);
  const { main, belay, haul: haulM } = result.ropeM;
  const rigRopesM = ropesBy(means, kitByMin(run.kind, apparatusAtMin, rates));
  const kitAtHand = kitClass({ main, belay, haul: haulM ?? 0 }, rigRopesM, means) === 0;
  const people = haulPeople({ haulTeam: result.team.walking, planHigh, alternatingLane }, arrivals);
  const time = minutes(
    {
      kind: run.kind,
      lowerM: ground.groundLengthM,
      raise: {
        raiseM: result.raiseM,
        idealAdvantage: idealAdvantage(run.advantage),
        compound: isCompound(run.advantage),
        pulls: result.pulls,
        regripsPerPull: result.regripsPerPull,
        crewAtMin: people.leastRaise.atMin,
      },
      secondApparatusAtMin: apparatusAtMin,
      kitAtMin: kitAtHand ? 0 : (fits.from?.atMin ?? null),
      lowerCrewAtMin: people.leastLower.atMin,
      patients,
    },
    conditions,
    rates,
  );
  return {
    ...{ haul: result, fits, kitAtHand, people, minutes: time },
    forces: [...onAnchors, ...gear],
    governing: governs(onAnchors),
  };
}
