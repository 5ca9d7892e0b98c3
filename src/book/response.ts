import type { AngleClass } from './angle-rules.ts';

export const responseTiers = ['first arriving', 'first alarm', 'mutual aid'] as const;

/** When a unit's people and kit are there: what comes first, with the first alarm, and from neighbours. */
export type ResponseTier = (typeof responseTiers)[number];

/** One unit on its way to a site, minutes after the first arrival. */
export interface UnitArrival {
  readonly unit: string;
  /** Id in the fleet; null where it brings no apparatus to stand on. */
  readonly apparatusId: string | null;
  readonly atMin: number;
  readonly people: number;
  readonly tier: ResponseTier;
  readonly kitIds: readonly string[];
}

/**
 * Shipped arrivals, common practice, no source: 15 people by the twelfth minute, eight more with mutual aid. Only the two
 * engines are counted on to stand as anchors; a district's own fleet says what else comes.
 */
export const defaultArrivals: readonly UnitArrival[] = [
  arrival('Engine 1', 'E1', 0, 4, 'first arriving', ['engine-kit']),
  arrival('Engine 2', 'E2', 8, 4, 'first alarm', ['engine-kit']),
  arrival('Medic 1', 'M1', 9, 2, 'first alarm', []),
  arrival('Battalion chief', null, 10, 1, 'first alarm', []),
  arrival('Truck 1', null, 12, 4, 'first alarm', []),
  arrival('Mutual aid', null, 25, 8, 'mutual aid', ['aid-kit']),
];

function arrival(
  unit: string,
  apparatusId: string | null,
  atMin: number,
  people: number,
  tier: ResponseTier,
  kitIds: readonly string[],
): UnitArrival {
  return { unit, apparatusId, atMin, people, tier, kitIds };
}

/** A line of the response table: what must be true of a site for whom to call. Every condition given must hold. */
export interface ResponseRow {
  readonly id: string;
  readonly when: {
    readonly planAs?: readonly AngleClass[];
    /** No rope at hand reaches by the first alarm. */
    readonly ropeShort?: boolean;
    /** People needed are not there by the first alarm. */
    readonly peopleShort?: boolean;
    readonly water?: boolean;
    /** Marks or words of the site, such as "wire": any one of them. */
    readonly hazards?: readonly string[];
    readonly laneClosed?: boolean;
  };
  readonly resource: string;
  readonly agency: string | null;
  readonly phone: string | null;
  readonly radio: string | null;
  readonly why: string;
}

/** What a study knows of a site that the table asks for. */
export interface ResponseQuestion {
  readonly planAs: AngleClass | null;
  readonly ropeShort: boolean;
  readonly peopleShort: boolean;
  readonly water: boolean;
  readonly hazards: readonly string[];
  readonly laneClosed: boolean;
}

/** Shipped response table: who is called is common practice, no source; agencies and numbers are the district's to fill in. */
export const defaultResponse: readonly ResponseRow[] = [
  row('technical-high', { planAs: ['high'] }, 'Technical rope team', 'planned as high angle'),
  row('technical-rope', { ropeShort: true }, 'Technical rope team', 'rope does not reach'),
  row('people', { peopleShort: true }, 'Mutual aid', 'fewer people than the haul needs'),
  row('water', { water: true }, 'Water rescue team', 'water at the end of the descent'),
  row('power', { hazards: ['wire', 'pole'] }, 'Power company', 'wires at the site'),
  row('traffic', { laneClosed: true }, 'Police or road department', 'a lane is closed'),
];

function row(id: string, when: ResponseRow['when'], resource: string, why: string): ResponseRow {
  return { id, when, resource, agency: null, phone: null, radio: null, why };
}

/** The rows of a table that a site calls for, in the table's order. An undecided angle (null) calls as if it were high. */
export function callsFor(table: readonly ResponseRow[], question: ResponseQuestion): ResponseRow[] {
  const planAs = question.planAs ?? 'high';
  return table.filter(
    ({ when }) =>
      (!when.planAs || when.planAs.includes(planAs)) &&
      (when.ropeShort === undefined || when.ropeShort === question.ropeShort) &&
      (when.peopleShort === undefined || when.peopleShort === question.peopleShort) &&
      (when.water === undefined || when.water === question.water) &&
      (when.laneClosed === undefined || when.laneClosed === question.laneClosed) &&
      (!when.hazards || when.hazards.some((hazard) => question.hazards.includes(hazard))),
  );
}
