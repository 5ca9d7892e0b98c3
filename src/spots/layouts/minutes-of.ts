import {
  type HaulPeople,
  haulPeople,
  idealAdvantage,
  isCompound,
  type Minutes,
  minutes,
  regripsPerPull,
} from '../../rigging/index.ts';
import type { RoadTraits } from '../../road/index.ts';
import type { Candidate } from './candidate.ts';
import type { Means } from './means.ts';
import { trafficPast } from './people-there.ts';

/** What the minutes of an arrangement hang on. */
type Timed = Pick<Candidate, 'kind' | 'base' | 'choice' | 'lanesTaken' | 'apparatusAtMin' | 'roomM'>;

/** People of an arrangement by phase. */
export function peopleOf(
  { base, choice, lanesTaken }: Pick<Candidate, 'base' | 'choice' | 'lanesTaken'>,
  means: Means,
  traits: RoadTraits,
): HaulPeople {
  const question = {
    haulTeam: base.byAdvantage[choice.advantage].team[choice.handTurns],
    planHigh: means.planHigh,
    alternatingLane: trafficPast(traits, lanesTaken).closure === 'one lane in turn',
  };
  return haulPeople(question, means.arrivals);
}

/** Minutes of an arrangement, its ropes and crews awaited. */
export function minutesOf(candidate: Timed, means: Means, traits: RoadTraits): Minutes {
  const { base, choice, kind, roomM, apparatusAtMin } = candidate;
  const people = peopleOf(candidate, means, traits);
  const ideal = idealAdvantage(choice.advantage);
  return minutes(
    {
      kind,
      lowerM: base.ground.groundLengthM,
      raise: {
        raiseM: choice.raiseM,
        idealAdvantage: ideal,
        compound: isCompound(choice.advantage),
        pulls: choice.resets + 1,
        regripsPerPull: regripsPerPull(ideal * choice.throwM, roomM),
        crewAtMin: people.leastRaise.atMin,
      },
      secondApparatusAtMin: apparatusAtMin,
      kitAtMin: choice.kitAtMin,
      lowerCrewAtMin: people.leastLower.atMin,
      patients: means.patients,
    },
    means.conditions,
    means.rates,
  );
}
