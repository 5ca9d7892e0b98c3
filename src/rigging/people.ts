/** Who comes and when, minutes after the call is answered by the first unit on scene. */
export interface Arrival {
  readonly atMin: number;
  readonly people: number;
}

export type Role =
  | 'command'
  | 'supervisor'
  | 'safety'
  | 'edge attendant'
  | 'main line'
  | 'progress capture'
  | 'belay'
  | 'rescuer'
  | 'attendant'
  | 'medic'
  | 'traffic'
  | 'haul team';

export interface RoleCount {
  readonly role: Role;
  readonly count: number;
}

/** How many a phase needs, by role, and the minute at which they have arrived; null where they never come. */
export interface PhasePeople {
  readonly count: number;
  readonly atMin: number | null;
  readonly roles: readonly RoleCount[];
}

export interface HaulPeople {
  /** First contact from the parked engine; null where planned as high. */
  readonly contact: PhasePeople | null;
  readonly leastLower: PhasePeople;
  readonly leastRaise: PhasePeople;
  readonly full: PhasePeople;
}

export interface PeopleQuestion {
  readonly haulTeam: number;
  readonly planHigh: boolean;
  /** Traffic passes the place in turns on one lane: two people hold it, otherwise one between apparatus parked as blocks. */
  readonly alternatingLane: boolean;
}

/**
 * People by phase (common practice, no source). Least: command supervises, safety is the edge attendant, one of three
 * attendants is the medic, main minds the capture. Full: every role its own person.
 */
export function haulPeople(question: PeopleQuestion, arrivals: readonly Arrival[]): HaulPeople {
  const phase = (roles: readonly RoleCount[]): PhasePeople => {
    const count = roles.reduce((sum, role) => sum + role.count, 0);
    return { count, atMin: arrivalOf(count, arrivals), roles };
  };
  const team: RoleCount = { role: 'haul team', count: question.haulTeam };
  const least = leastRoles(question.alternatingLane ? 2 : 1);
  return {
    contact: question.planHigh ? null : phase(contactRoles),
    leastLower: phase(least),
    leastRaise: phase([...least, team]),
    full: phase([...fullRoles, team]),
  };
}

/** Minute at which so many people have arrived; null where they never do. */
export function arrivalOf(count: number, arrivals: readonly Arrival[]): number | null {
  let there = 0;
  for (const { atMin, people } of [...arrivals].sort((a, b) => a.atMin - b.atMin)) {
    there += people;
    if (there >= count) return atMin;
  }
  return null;
}

const one = (role: Role): RoleCount => ({ role, count: 1 });

const contactRoles: readonly RoleCount[] = [one('command'), one('main line'), one('belay'), one('rescuer')];

const leastRoles = (traffic: number): RoleCount[] => [
  one('command'),
  one('safety'),
  one('main line'),
  one('belay'),
  { role: 'attendant', count: 3 },
  { role: 'traffic', count: traffic },
];

const fullRoles: readonly RoleCount[] = [
  one('command'),
  one('supervisor'),
  one('safety'),
  one('edge attendant'),
  one('main line'),
  one('progress capture'),
  one('belay'),
  { role: 'attendant', count: 4 },
  one('medic'),
  { role: 'traffic', count: 2 },
];
