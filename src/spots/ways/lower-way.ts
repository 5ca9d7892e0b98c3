import { haulPeople, minutes, ropeBelowEdge, ropeFits } from '../../rigging/index.ts';
import { formatLength } from '../../units/index.ts';
import type { LowerTo, Way, WayQuestion } from './way-types.ts';

/**
 * Lowering from the road to a road or trail below, with the least crew for lowering (common practice, no source). The time that
 * whoever meets the litter takes to get there is not counted, and the way says so.
 */
export function lowerWay(question: WayQuestion, to: LowerTo, anchorRunM: number): Way {
  const { arrivals, kits, conditions, rates, patients, alternatingLane, units } = question;
  const lineM = ropeBelowEdge(to.ropeLineM, to.groundM, rates) + anchorRunM + rates.tailsM;
  const fits = ropeFits({ main: lineM, belay: lineM, haul: null }, kits, rates);
  const crew = haulPeople({ haulTeam: 0, planHigh: false, alternatingLane }, arrivals).leastLower;
  const { total, shown } = minutes(
    {
      kind: 'straight',
      lowerM: to.groundM,
      raise: null,
      secondApparatusAtMin: 0,
      kitAtMin: fits.from?.atMin ?? null,
      lowerCrewAtMin: crew.atMin,
      patients,
    },
    conditions,
    rates,
  );
  const where = to.name ?? (to.what === 'road' ? 'the road below' : 'the trail below');
  const down = `${formatLength(to.groundM, units)} down`;
  return {
    kind: 'lower',
    ropeM: lineM,
    people: { count: crew.count, atMin: crew.atMin },
    minutes: total,
    shown,
    meets:
      to.what === 'road'
        ? `an ambulance on ${where}, ${down}`
        : `bearers on ${where}, ${down}, who carry on from there`,
    bearers: null,
    endsAtVehicle: to.what === 'road',
    allowed: fits.from !== null && total !== null,
    why: [
      `The descent meets ${to.what === 'road' ? 'a road' : 'a trail'} ${down}: nothing is hauled.`,
      ...(to.goesOn ? ['Only for a patient above it: the descent goes on below.'] : []),
      `The time to get there from the road above${to.what === 'trail' ? ', and to carry out from there,' : ''} is not counted.`,
      ...(fits.from ? [] : ['No two ropes that come reach without a join.']),
      ...(crew.atMin === null ? ['Too few people come to lower.'] : []),
    ],
  };
}
