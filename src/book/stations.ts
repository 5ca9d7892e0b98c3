import type { Apparatus } from './fleet.ts';
import type { UnitArrival } from './response.ts';

/** Where apparatus and kit are kept, WGS 84 degrees. */
export interface Station {
  readonly id: string;
  readonly name: string;
  readonly lon: number;
  readonly lat: number;
  readonly apparatusIds: readonly string[];
  /** Kit kept in the station itself: it comes with the first apparatus that leaves. */
  readonly kitIds: readonly string[];
  /** From the call to wheels rolling. */
  readonly turnoutMin: number;
  /** Another district's. */
  readonly mutualAid: boolean;
}

/**
 * Arrivals at a site from the stations' driving minutes to it, in minutes after the first unit, earliest first. A station
 * without driving minutes, or an apparatus that the fleet does not list, brings nobody.
 */
export function arrivalsFromStations(
  stations: readonly Station[],
  fleet: readonly Apparatus[],
  drivingMin: Readonly<Record<string, number>>,
): UnitArrival[] {
  const units = stations.flatMap((station) => unitsOf(station, fleet, drivingMin[station.id]));
  units.sort((a, b) => a.atMin - b.atMin);
  const first = units[0]?.atMin ?? 0;
  return units.map((unit, i) => ({
    ...unit,
    atMin: unit.atMin - first,
    tier: unit.tier === 'first alarm' && i === 0 ? 'first arriving' : unit.tier,
  }));
}

function unitsOf(station: Station, fleet: readonly Apparatus[], drivingMin: number | undefined): UnitArrival[] {
  if (!(drivingMin !== undefined && drivingMin >= 0)) return [];
  return station.apparatusIds
    .flatMap((id) => fleet.find((apparatus) => apparatus.id === id) ?? [])
    .map((apparatus, i) => ({
      unit: apparatus.name,
      apparatusId: apparatus.id,
      atMin: station.turnoutMin + drivingMin,
      people: apparatus.crew,
      tier: station.mutualAid ? 'mutual aid' : 'first alarm',
      kitIds: i === 0 ? [...apparatus.kitIds, ...station.kitIds] : apparatus.kitIds,
    }));
}
