import type { Apparatus, Kit, ResponseRow, Station, UnitArrival } from '../../src/book/index.ts';
import type { Records } from './district-places.ts';

/** Apparatus as the book keeps it, one record each. */
export const fleetRecords = (fleet: readonly Apparatus[]): Records => fleet.map((apparatus) => ({ ...apparatus }));

/** Kits, with their ropes and items as records of their own. */
export function kitRecords(kits: readonly Kit[]): { kits: Records; ropes: Records; kitItems: Records } {
  return {
    kits: kits.map(({ id, name }) => ({ id, name })),
    ropes: kits.flatMap(({ id, ropes }) => ropes.map((rope, i) => ({ id: `${id}-rope-${i + 1}`, kitId: id, ...rope }))),
    kitItems: kits.flatMap(({ id, items }) =>
      items.map((item, i) => ({ id: `${id}-item-${i + 1}`, kitId: id, ...item })),
    ),
  };
}

/** Stations, each position one value. */
export const stationRecords = (stations: readonly Station[]): Records =>
  stations.map(({ lon, lat, ...rest }) => ({ ...rest, at: { lon, lat } }));

/** The response file: areas with who comes to them, and whom to call. */
export interface ResponseFile {
  readonly areas: readonly {
    readonly name: string;
    readonly roads: readonly string[];
    readonly arrivals: readonly UnitArrival[];
  }[];
  readonly response: readonly ResponseRow[];
}

/** Areas, arrivals and the response table; conditions that a row does not name hold anyway. */
export function responseRecords({ areas, response }: ResponseFile): {
  responseAreas: Records;
  arrivals: Records;
  responseRows: Records;
} {
  const idOf = (name: string): string => name.toLowerCase().replaceAll(' ', '-');
  const any = { planAs: null, ropeShort: null, peopleShort: null, water: null, laneClosed: null, hazards: null };
  return {
    responseAreas: areas.map(({ name, roads }) => ({ id: idOf(name), name, roads })),
    arrivals: areas.flatMap(({ name, arrivals }) =>
      arrivals.map((arrival) => ({ id: `${idOf(name)}-${idOf(arrival.unit)}`, areaId: idOf(name), ...arrival })),
    ),
    responseRows: response.map(({ when, ...row }, order) => ({ ...row, order, when: { ...any, ...when } })),
  };
}
