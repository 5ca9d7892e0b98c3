import {
  type Apparatus,
  defaultRates,
  type Kit,
  type ResponseRow,
  type Station,
  type UnitArrival,
} from '../../book/index.ts';
import type { Resources } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import { type NamedText, readPlain } from './plain-json.ts';
import { fleetFile, kitFile, responseFile, stationsFile } from './schemas.ts';

/** Roads, by name, that one alarm serves, and who comes. An area without roads serves every road that no other names. */
export interface AlarmArea {
  readonly name: string;
  readonly roads: readonly string[];
  readonly arrivals: readonly UnitArrival[];
}

/** What a district has and who answers where. */
export interface DistrictResources {
  readonly fleet: readonly Apparatus[];
  readonly kits: readonly Kit[];
  readonly stations: readonly Station[];
  readonly areas: readonly AlarmArea[];
  readonly response: readonly ResponseRow[];
}

/** The JSON files of fleet, kit, stations and response. */
export interface ResourceFiles {
  readonly fleet: NamedText;
  readonly kit: NamedText;
  readonly stations: NamedText;
  readonly response: NamedText;
}

/**
 * Reads fleet, kit, stations and response, and checks that they name nothing that is not there. Throws `UserError` with one
 * sentence that says what is wrong and where.
 */
export function readResources(files: ResourceFiles): DistrictResources {
  const { fleet } = readPlain(files.fleet, fleetFile, 'apparatus');
  const { kits } = readPlain(files.kit, kitFile, 'kits');
  const { stations } = readPlain(files.stations, stationsFile, 'stations');
  const { areas, response } = readPlain(files.response, responseFile, 'arrivals and response');
  once(files.fleet.name, 'apparatus', fleet);
  once(files.kit.name, 'kit', kits);
  once(files.stations.name, 'station', stations);
  once(files.response.name, 'response row', response);
  const isKit = among(kits, files.kit.name, 'kit');
  const isApparatus = among(fleet, files.fleet.name, 'apparatus');
  for (const { id, kitIds } of fleet) isKit(files.fleet.name, id, kitIds);
  for (const { id, kitIds, apparatusIds } of stations) {
    isKit(files.stations.name, id, kitIds);
    isApparatus(files.stations.name, id, apparatusIds);
  }
  for (const { arrivals } of areas) {
    for (const { unit, kitIds, apparatusId } of arrivals) {
      isKit(files.response.name, unit, kitIds);
      isApparatus(files.response.name, unit, apparatusId === null ? [] : [apparatusId]);
    }
  }
  return { fleet, kits, stations, areas, response: response as readonly ResponseRow[] };
}

/**
 * What a study of a place on a road takes: the arrivals of the area that names the road, else of the area for all others, else
 * those of the area whose people come latest, which errs to the cautious side.
 */
export function resourcesOn(district: DistrictResources, road: string | null): Resources {
  const { fleet, kits, areas, response } = district;
  const own = areas.find(({ roads }) => road !== null && roads.includes(road));
  const rest = areas.find(({ roads }) => roads.length === 0);
  const latest = [...areas].sort((a, b) => personMinutes(b) - personMinutes(a)).at(0);
  const arrivals = (own ?? rest ?? latest)?.arrivals ?? [];
  return { how: 'book', fleet, kits, arrivals, response, rates: defaultRates };
}

const personMinutes = ({ arrivals }: AlarmArea): number =>
  arrivals.reduce((sum, { atMin, people }) => sum + atMin * people, 0);

function once(file: string, what: string, records: readonly { readonly id: string }[]): void {
  const seen = new Set<string>();
  for (const { id } of records) {
    if (seen.has(id))
      throw new UserError('book-twice', `${file}: ${what} "${id}" is there twice; give each its own id.`);
    seen.add(id);
  }
}

function among(records: readonly { readonly id: string }[], listedIn: string, what: string) {
  const known = new Set(records.map(({ id }) => id));
  return (file: string, owner: string, ids: readonly string[]): void => {
    const missing = ids.find((id) => !known.has(id));
    if (missing === undefined) return;
    throw new UserError(
      'book-missing',
      `${file}: "${owner}" names ${what} "${missing}", which ${listedIn} does not list; add it there or correct the name.`,
    );
  };
}
