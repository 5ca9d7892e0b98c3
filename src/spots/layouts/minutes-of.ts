import { isCompound, type Minutes, minutes, regripsPerPull } from '../../rigging/index.ts';
import type { RoadTraits } from '../../road/index.ts';
import type { Candidate } from './candidate.ts';
import { crewAtMin, type Means } from './means.ts';
import { trafficPast } from './people-there.ts';

/** What the minutes of an arrangement hang on. */
type Timed = Pick<Candidate, 'kind' | 'base' | 'choice' | 'lanesTaken' | 'apparatusAtMin' | 'roomM'>;

/** Minutes of an arrangement, its ropes and crews awaited: for a search, with the people that `haulPeople` counts. */
export function minutesOf(candidate: Timed, means: Means, traits: RoadTraits): Minutes {
  const { base, choice, kind, roomM, apparatusAtMin, lanesTaken } = candidate;
  const { othersCount } = trafficPast(traits, lanesTaken);
  const { ideal, team } = base.byAdvantage[choice.advantage];
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
        crewAtMin: crewAtMin(means, othersCount + team[choice.handTurns]),
      },
      secondApparatusAtMin: apparatusAtMin,
      kitAtMin: choice.kitAtMin,
      lowerCrewAtMin: crewAtMin(means, othersCount),
      patients: means.patients,
    },
    means.conditions,
    means.rates,
  );
}
